import type { Contract } from "../../shared/contract";
import { dye } from "./dye";
import { expiry } from "./expiry";
import { uptake } from "./uptake";

export const resin: readonly Contract[] = [uptake, dye, expiry];

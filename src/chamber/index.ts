import type { Contract } from "../../shared/contract";
import { fill } from "./fill";

export const chamber: readonly Contract[] = [fill];

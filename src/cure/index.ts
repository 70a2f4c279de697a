import type { Contract } from "../../shared/contract";
import { bake } from "./bake";

export const cure: readonly Contract[] = [bake];

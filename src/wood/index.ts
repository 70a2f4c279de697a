import type { Contract } from "../../shared/contract";
import { gravity } from "./gravity";
import { moisture } from "./moisture";
import { voids } from "./voids";

export const wood: readonly Contract[] = [moisture, gravity, voids];

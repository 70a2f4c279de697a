import type { Contract } from "../../shared/contract";
import { dryWeight } from "./dryweight";
import { emc } from "./emc";
import { gravity } from "./gravity";
import { isDry } from "./isdry";
import { moisture } from "./moisture";
import { pieceGravity } from "./piecegravity";
import { stopWeight } from "./stopweight";
import { suitability } from "./suitability";
import { voids } from "./voids";

export const wood: readonly Contract[] = [moisture, dryWeight, stopWeight, isDry, emc, gravity, pieceGravity, voids, suitability];

import type { Contract } from "../../shared/contract";
import { arrange } from "./arrange";
import { ballast } from "./ballast";
import { fill } from "./fill";
import { fluidLevel } from "./fluidlevel";
import { headroom } from "./headroom";
import { perload } from "./perload";

export const chamber: readonly Contract[] = [arrange, fill, fluidLevel, headroom, ballast, perload];

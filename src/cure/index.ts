import type { Contract } from "../../shared/contract";
import { bake } from "./bake";
import { bakecurve } from "./bakecurve";
import { cooldown } from "./cooldown";
import { coretemp } from "./coretemp";
import { ovenfit } from "./ovenfit";
import { selfheat } from "./selfheat";

export const cure: readonly Contract[] = [bake, coretemp, bakecurve, cooldown, selfheat, ovenfit];

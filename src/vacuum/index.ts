import type { Contract } from "../../shared/contract";
import { airOut } from "./airout";
import { barometer } from "./barometer";
import { fullVacuum } from "./fullvacuum";
import { leak } from "./leak";
import { lidLoad } from "./lidload";
import { pumpDown } from "./pumpdown";
import { waterBoils } from "./waterboils";

export const vacuum: readonly Contract[] = [barometer, fullVacuum, airOut, waterBoils, pumpDown, leak, lidLoad];

import type { Contract } from "../../shared/contract";
import { bakeloss } from "./bakeloss";
import { dye } from "./dye";
import { dyetopup } from "./dyetopup";
import { expiry } from "./expiry";
import { fullness } from "./fullness";
import { intub } from "./intub";
import { mix } from "./mix";
import { oldestuseby } from "./oldestuseby";
import { resinbook } from "./resinbook";
import { spoons } from "./spoons";
import { uptake } from "./uptake";
import { weightgain } from "./weightgain";

export const resin: readonly Contract[] = [
  uptake,
  weightgain,
  fullness,
  bakeloss,
  dye,
  dyetopup,
  spoons,
  mix,
  intub,
  expiry,
  oldestuseby,
  resinbook,
];

import { allowAnyName, type Engine as Naming } from "./anyname";
import { type Engine as Ending, keepBothEnds } from "./bothends";
import { keepAlignment } from "./file/beside/alignment";
import { follow, type Engine as Keeping } from "./file/beside/followed";
import { logCommands } from "./file/kept/commandlog";
import { type Engine as Guarding, guard } from "./guard";
import { compileLate } from "./late";
import { nameNewColumns } from "./newcolumns";
import { calculateOnSight } from "./onsight";
import { type Engine as OtherNames, takeOtherNames } from "./othernames";
import { type Engine as Rounding, roundAsOthers } from "./rounding";
import { keepLinksSafe, type Engine as Linking } from "./safelinks";
import { showLackedFormats } from "./shownformats";
import { readTypedCells } from "./typed";

/** The plugins and changes that the engine needs, registered once, before a workbook opens. */
export function extend(engine: Keeping & Rounding & Ending & Naming & Guarding & Linking & OtherNames): void {
  keepBothEnds(engine);
  allowAnyName(engine);
  follow(engine);
  logCommands(engine);
  keepAlignment(engine);
  roundAsOthers(engine);
  readTypedCells(engine);
  compileLate(engine);
  calculateOnSight(engine);
  showLackedFormats(engine);
  keepLinksSafe(engine);
  takeOtherNames(engine);
  nameNewColumns(engine);
  guard(engine);
}

import { cautionsOf } from "../../cautions";
import { chamber } from "../../demo";
import { lidLoad } from "../../vacuum/lidload";
import type { Allowed } from "../book";
import { ask, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import type { Ref } from "../place";

export interface Equipment {
  readonly chamber: Ref;
  readonly height: Ref;
  readonly pumpRate: Ref;
}

/** Chamber, pump and lid: no settings, and yet facts of the shop. */
export function equipmentLines(page: Page, kit: Kit): Equipment {
  const length = kit.unit("length");
  const inches = (least: number, most: number): Allowed => ({ from: kit.of("length", least, 1), to: kit.of("length", most, 1) });
  const shown = <T>(value: T) => (kit.demo ? value : undefined);
  page.heading("chamber, pump, lid", "here", "unit", "what it is");
  const inside = page.line({
    label: "chamber",
    value: shown(kit.of("length", chamber)),
    input: inches(0.1, 200),
    unit: length,
    note: "inside diameter",
  });
  const height = page.line({
    label: "height",
    value: shown(kit.of("length", chamber)),
    input: inches(0.1, 200),
    unit: length,
    note: "inside height of the chamber",
  });
  const pumpRate = page.line({
    label: "pump",
    value: shown(kit.of("flow", 2.5)),
    input: { from: kit.of("flow", 0.001, 3), to: kit.of("flow", 1e5) },
    unit: kit.unit("flow"),
    note: "rate of the pump or venturi",
  });
  const lid = page.line({
    label: "lid",
    value: shown(kit.of("length", 1)),
    input: inches(0.01, 20),
    unit: length,
    note: "thickness of a flat acrylic lid; blank if there is none",
  });
  const material = page.line({
    label: "material",
    value: shown("cast acrylic"),
    input: { list: ["cast acrylic", "extruded acrylic"], only: true },
    note: "of the lid",
  });
  const asked = ask(lidLoad, { diameter: inside, thickness: lid, material });
  const said = page.line({
    label: "the lid is",
    formula: formula`IF(${lid}="","",IF(ISERROR(INDEX(${asked},1,1)),"refused: do not pump",INDEX(${asked},1,1)))`,
    look: "words",
    note: "a screen that can only refuse; it certifies nothing",
  });
  page.alert("bad", said, formula`LEFT(${said},7)="refused"`);
  page.cautions(cautionsOf(["lid", "chamber"]));
  return { chamber: inside, height, pumpRate };
}

import { cautionsOf } from "../../cautions";
import { chamber } from "../../demo";
import { lidLoad } from "../../vacuum/lidload";
import type { Allowed } from "../book";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Line, Page } from "../page";
import type { Ref } from "../place";
import { shopIsWrong } from "../verdict";
import { cannotBe } from "./settingline";

export interface Equipment {
  readonly chamber: Ref;
  readonly height: Ref;
  readonly pumpRate: Ref;
  /** What the screen says of the lid. */
  readonly lid: Ref;
  readonly isRefused: Formula;
}

const measured = "measured in the shop";

const allowedWords = (allowed: Allowed): string =>
  "from" in allowed ? `${allowed.from} to ${allowed.to}` : "list" in allowed ? "one from the list" : "";

/** Chamber, pump and lid: no settings, and yet facts of the shop. */
export function equipmentLines(page: Page, kit: Kit): Equipment {
  const length = kit.unit("length");
  const inches = (least: number, most: number): Allowed => ({ from: kit.of("length", least, 1), to: kit.of("length", most, 1) });
  const shown = <T>(value: T) => (kit.demo ? value : undefined);
  page.heading("Chamber, pump, lid", "your value", "unit", "what it is", "", "range", "where it comes from");
  const fact = ({ input, ...line }: Line & { readonly input: Allowed; readonly note: string }, from: string): Ref => {
    const { row } = page;
    const ref = page.line({ ...line, input });
    const [when, words] = cannotBe(ref, input, kit);
    page.put(row, 3, { formula: formula`IF(${when},"${words}","${line.note}")`, look: "note" });
    page.alert("bad", ref, when);
    page.put(row, 5, { value: allowedWords(input), look: "note" });
    page.put(row, 6, { value: from, look: "note" });
    return ref;
  };
  const size = (label: string, note: string): Ref =>
    fact({ label, value: shown(kit.of("length", chamber)), input: inches(0.1, 200), unit: length, note }, measured);
  const inside = size("chamber", "inside diameter");
  const height = size("height", "inside height of the chamber");
  const pumpRate = fact(
    {
      label: "pump",
      value: shown(kit.of("flow", 2.5)),
      input: { from: kit.of("flow", 0.001, 3), to: kit.of("flow", 1e5) },
      unit: kit.unit("flow"),
      note: "rate of the pump or venturi",
    },
    "the pump's plate",
  );
  const lid = fact(
    {
      label: "lid",
      value: shown(kit.of("length", 1)),
      input: inches(0.01, 20),
      unit: length,
      note: "flat acrylic, thickness; blank if none",
    },
    measured,
  );
  const material = fact(
    {
      label: "material",
      value: shown("cast acrylic"),
      input: { list: ["cast acrylic", "extruded acrylic"], only: true },
      note: "of the lid",
    },
    "the lid's seller",
  );
  const verdict = ask(lidLoad, { diameter: inside, thickness: lid, material });
  const said = page.line({
    label: "lid check",
    formula: formula`IF(${lid}="","",IF(${shopIsWrong},"do not pump: not checked, see the first line",IF(${material}="","do not pump: choose what it is made of",IFERROR(${verdict},"do not pump: too weak"))))`,
    look: "words",
    note: formula`IF(COUNT(${inside},${lid})<2,"it needs two plain numbers: the inside diameter of the chamber and the thickness of the lid","this can only rule a lid out; it is no approval")`,
  });
  const isRefused = formula`LEFT(${said},11)="do not pump"`;
  page.alert("bad", said, isRefused);
  page.cautions(cautionsOf(["lid", "chamber"]));
  return { chamber: inside, height, pumpRate, lid: said, isRefused };
}

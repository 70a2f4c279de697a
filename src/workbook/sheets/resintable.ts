import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { cellIn, key, type Ref, refTo, whole } from "../place";
import { sheetTable } from "../sheettable";
import { dayExample } from "../usdates";
import { ownReason } from "../verdict";
import type { Blanks } from "./blanks";
import { briefDay, demoDay } from "./day";
import { unreadable } from "./judged";

/** The resin on hand that My Shop tells of, and its color. */
export interface OnHand {
  readonly color: Ref;
  readonly volume: Ref;
  readonly mixedOn: Ref;
  readonly dyeRate: Ref;
}

/** Mixed resin by color: what is on hand is typed, what the plan takes of each stands beside it. */
export function resinTable(page: Page, kit: Kit, rows: number, onHand: OnHand, list: Ref, { planned }: Blanks, judging: number): void {
  const [names, quantities] = [0, 1].map((right) => whole(refTo(list.sheet, list.row, list.column + right, list.rows)));
  const used = whole(refTo(planned.sheet, planned.row, planned.column + 6, planned.rows));
  const amount = (color: Ref, volume: Ref, line: string): Formula => {
    const own = formula`SUMIF(${names},"${line}, "&IF(${color}="","no color",${color}),${quantities})`;
    const only = formula`IF(COUNTIF(${used},${color})>0,SUMIF(${names},"${line}",${quantities}),0)`;
    return formula`IF(AND(${color}="",${volume}=""),"",IF(COUNTIF(${names},"${line}")>0,${only},${own}))`;
  };
  const fluid = kit.unit("fluid");
  const red = { color: "red", volume: kit.of("fluid", 0.6, 1), mixedOn: demoDay - 20, dyeRate: kit.of("strength", 0.25, 2) };
  const { of } = sheetTable(
    page,
    {
      color: {
        title: "resin by color",
        input: true,
        hint: "A color of Blanks. Nothing here: the plan goes by “resin on hand” on My Shop.",
      },
      volume: { title: "on hand", unit: fluid, input: { from: 0, to: kit.of("fluid", 100) } },
      mixedOn: { title: "mixed on", input: { date: true }, format: briefDay(kit) },
      dyeRate: { title: "dye rate", unit: kit.unit("strength"), format: "0.00", input: { from: 0, to: kit.of("strength", 50, 1) } },
      mix: { title: "to mix", unit: fluid, format: "0.00", each: ({ color, volume }) => amount(color, volume, "resin to mix") },
      dye: { title: "dye", unit: kit.unit("powder"), format: "0.00", each: ({ color, volume }) => amount(color, volume, "dye") },
      left: { title: "left", unit: fluid, format: "0.00", each: ({ color, volume }) => amount(color, volume, "resin left") },
      packets: { title: "packets", format: "0", each: ({ color, volume }) => amount(color, volume, "packets") },
    },
    kit.demo ? [{}, red] : [],
    { spare: rows - (kit.demo ? 2 : 0), column: 1 },
  );
  for (let i = 0; i < rows; i++) tellProblem(page, kit, of, used, i, judging);
  // The first row takes its values from My Shop, and so from the Resin Book, until somebody types over it.
  const follows: [Ref, Ref][] = [
    [of.color, onHand.color],
    [of.volume, onHand.volume],
    [of.mixedOn, onHand.mixedOn],
    [of.dyeRate, onHand.dyeRate],
  ];
  for (const [{ row, column }, from] of follows) {
    const { value: _, ...cell } = page.sheet.cells.get(key(row, column)) ?? {};
    page.put(row, column, { ...cell, formula: formula`IF(OR(${onHand.color}="",${from}=""),"",${from})` });
  }
}

/** Beside each row the first value in it that the plan cannot read, or a color that no blank has. */
function tellProblem(
  page: Page,
  kit: Kit,
  of: Readonly<Record<"color" | "volume" | "mixedOn" | "dyeRate" | "packets", Ref>>,
  used: Ref,
  row: number,
  judging: number,
): void {
  const [color, volume, mixedOn, dyeRate] = [of.color, of.volume, of.mixedOn, of.dyeRate].map((ref) => cellIn(ref, row));
  const judged = (setting: string, typed: Ref, nth: number) =>
    unreadable(page, setting, typed, { row: color.row + nth * of.color.rows, column: judging });
  const wrongs: [typed: Ref, when: Formula, words: string][] = [
    [color, formula`AND(LEN(${color})>0,COUNTIF(${whole(of.color)},${color})>1)`, "this color is listed twice: put all of it in one row"],
    [
      volume,
      judged("resin on hand", volume, 0),
      `on hand cannot be used: type ${kit.unit("fluid")} as a number, such as ${kit.by(1.5, 1500)}`,
    ],
    [mixedOn, judged("resin mixed on", mixedOn, 1), `mixed on is no day: type one such as ${dayExample(kit.system)}`],
    [dyeRate, judged("resin dye rate", dyeRate, 2), "dye rate cannot be used: type a plain number, such as 0.25"],
  ];
  const idle = formula`IF(AND(LEN(${color})>0,COUNTIF(${used},${color})=0),"no blank has this color: check how it is spelled","")`;
  const said = wrongs.reduceRight<Formula>((rest, [, when, words]) => formula`IF(${when},"${words}",${rest})`, idle);
  const at = page.across(color.row, of.packets.column + 1, 5, { formula: ownReason(said), look: "note" });
  for (const [typed, when] of wrongs) page.alert("bad", typed, when);
  page.alert("attention", at, formula`LEN(${at})>0`);
}

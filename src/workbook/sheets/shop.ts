import { noShop, type Setting } from "../../../shared/settings";
import { fromInternal } from "../../../shared/unit";
import { dyeRate } from "../../resin/settings";
import { settingsBySubject } from "../../shop";
import { type Formula, formula } from "../formula";
import { type Kit, readShop, scale } from "../kit";
import { Page } from "../page";
import { key, type Ref, refTo, whole } from "../place";
import { type Equipment, equipmentLines } from "./equipment";
import { fixed, settingLine, standardFormula } from "./settingline";

/** The settings that differ most from shop to shop. */
const eight = ["units", "scale reads", "cover", "fullness", "dye rate", "in the oven", "vacuum hours", "altitude"];

/** The tub settings: last, so that a sheet with a tub of its own can take the rows above as its shop. */
const tubs = ["tub", "tub height", "tub wall", "tubs"];

/** A bound above the number of rows of the sheet. */
const last = 1000;

const titles: Readonly<Record<string, string>> = {
  wood: "Wood",
  chamber: "In the chamber",
  vacuum: "Vacuum and air",
  resin: "Resin and dye",
  cure: "Oven and bake",
  plan: "The plan: hours and shelves",
};

/** Settings whose default depends on another setting. */
const derived = (at: (name: string) => Ref, usual: number): Readonly<Record<string, Formula>> => ({
  "soak hours": formula`2*${at("vacuum hours")}`,
  "wrap minutes per piece": formula`IF(${at("in the oven")}="foil",1,0)`,
  "oven surface coefficient": formula`IF(${at("in the oven")}="foil",8,IF(${at("in the oven")}="fan",20,12))`,
  "resin dye rate": formula`IF(AND(${at("resin on hand")}>0,ABS(${at("dye rate")}-${usual})>0.000001),"type what it was dyed at",${at("dye rate")})`,
});

export interface Shop extends Equipment {
  readonly page: Page;
  /** Two columns, setting and value: what every formula takes as the shop. */
  readonly range: Ref;
  /** The same but for the tubs: for a vessel that is named on its own. */
  readonly withoutTubs: Ref;
  /** Where the value of a setting is typed, and where the one that holds stands. */
  readonly typed: (name: string) => Ref;
  readonly holds: (name: string) => Ref;
  /** How many of the first eight are typed. */
  readonly firstTyped: Formula;
  readonly first: number;
  /** Fills inputs with formulas, until somebody types over them. */
  readonly follow: (from: Readonly<Record<string, Ref>>) => void;
  /** Whether a setting has no default. */
  readonly isOptional: (name: string) => boolean;
  /** True where there is resin on hand without a mixing date. */
  readonly isUndated: Formula;
}

/** The facts of the shop: the chamber first, then the settings, the eight that matter most before the rest. */
export function shopSheet(kit: Kit): Shop {
  const page = new Page(
    "My Shop",
    "The facts about your shop. Type your value in the pale cells; where one is blank, the value in use is shown beside it.",
    [22, 15, 10, 34, 15, 16, 34],
    { landscape: true },
  );
  page.open("My Shop");
  const equipment = equipmentLines(page, kit);
  page.skip();
  const first = page.row;
  page.heading("setting", "your value", "unit", "what it is", "value in use", "range", "where it comes from");
  page.sheet.print = { ...page.sheet.print, titleRow: first };
  const all = Object.values(settingsBySubject).flat();
  const groups: [string, Setting[]][] = [
    ["Eight settings first", eight.map((name) => all.find((setting) => setting.name === name)!)],
    ...Object.entries(settingsBySubject).flatMap(([subject, own]): [string, Setting[]][] => {
      const rest = own.filter(({ name }) => !eight.includes(name) && !tubs.includes(name));
      return rest.length ? [[titles[subject], rest]] : [];
    }),
    ["Tubs or jars that stand in the chamber", tubs.map((name) => all.find((setting) => setting.name === name)!)],
  ];
  const rows = new Map<string, number>();
  let row = page.row;
  for (const [, own] of groups) {
    row++;
    for (const { name } of own) rows.set(name, row++);
  }
  const name = page.sheet.name;
  const rowOf = (setting: string) => {
    const found = rows.get(setting);
    if (found === undefined) throw new Error(`no setting is called ${setting}`);
    return found;
  };
  const typed = (setting: string) => refTo(name, rowOf(setting), 1);
  const holds = (setting: string) => refTo(name, rowOf(setting), 4);
  const follows = derived(holds, fromInternal(dyeRate.fallback(noShop), kit.units.strength));
  const isUndated = formula`AND(SUM(${holds("resin on hand")})>0,COUNT(${typed("resin mixed on")})=0)`;
  const standard = readShop([
    ["units", kit.system],
    ["scale reads", scale],
  ]);
  const unset = readShop([["units", "US"]]);
  for (const [title, own] of groups) {
    const isFolded = own !== groups[0][1];
    page.heading(title);
    if (isFolded) {
      // A problem in the collapsed rows is told in the row that opens them.
      const notes = refTo(name, page.row, 3, own.length);
      const isWrong = formula`SUMPRODUCT((LEFT(${notes},5)="type ")*1)>0`;
      page.put(page.row - 1, 3, {
        formula: formula`IF(${isWrong},"a value here is wrong or missing: press + at the left","${own.length} more: press + at the left to open")`,
        look: "bar",
      });
      page.fold(own.length);
    }
    for (const setting of own)
      settingLine(
        page,
        setting,
        kit,
        follows[setting.name] ?? standardFormula(setting, (setting.name in fixed(kit) ? unset : standard).get(setting), kit),
        setting.name === "resin mixed on" ? [isUndated, "type its day, read off the tub: the resin on hand has no date"] : undefined,
      );
  }
  // Starts below the line with the problems, to avoid a circular reference.
  const below = 2;
  const notes = refTo(name, below, 3, page.row - below);
  const isWrong = formula`SUMPRODUCT((LEFT(${whole(notes)},5)="type ")*1)>0`;
  const isBad = formula`(LEFT(${whole(notes)},5)="type ")`;
  // The first row with a problem, from the top of the sheet.
  const at = formula`${last - below}-SUMPRODUCT(MAX(${isBad}*(${last}-ROW(${whole(notes)}))))`;
  const others = formula`IF(SUMPRODUCT(${isBad}*1)>1," "&SUMPRODUCT(${isBad}*1)-1&" more on My Shop, marked there.","")`;
  const names = refTo(name, below, 0, page.row - below);
  const firstTyped = formula`SUMPRODUCT((LEN(${whole(refTo(name, rows.get(eight[0])!, 1, eight.length))})>0)*1)`;
  page.warn([
    isWrong,
    formula`"“"&INDEX(${whole(names)},${at})&"” on My Shop is wrong or missing: "&INDEX(${whole(notes)},${at})&"."&${others}`,
  ]);
  const isOptional = (setting: string) => standard.get(all.find((one) => one.name === setting)!) === undefined;
  const follow = (from: Readonly<Record<string, Ref>>): void => {
    for (const [setting, ref] of Object.entries(from)) {
      const { row, column } = typed(setting);
      const { value: _, ...cell } = page.sheet.cells.get(key(row, column)) ?? {};
      page.put(row, column, { ...cell, formula: formula`IF(${ref}="","",${ref})` });
    }
  };
  const range = refTo(name, first, 0, page.row - first, 2);
  const withoutTubs = { ...range, rows: range.rows - tubs.length - 1 };
  return { page, typed, holds, firstTyped, first: eight.length, follow, isOptional, isUndated, range, withoutTubs, ...equipment };
}

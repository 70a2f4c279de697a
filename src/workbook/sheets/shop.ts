import { tidy } from "../../../shared/outcome";
import type { Setting } from "../../../shared/settings";
import { fromInternal, type Units } from "../../../shared/unit";
import { shop as chosen } from "../../demo";
import { settingsBySubject } from "../../shop";
import type { Allowed } from "../book";
import { type Formula, formula } from "../formula";
import { type Kit, readShop, scale } from "../kit";
import { Page } from "../page";
import { type Ref, refTo } from "../place";
import { type Equipment, equipmentLines } from "./equipment";

/** The settings that differ most from shop to shop. */
const eight = ["units", "scale reads", "cover", "fullness", "dye rate", "in the oven", "vacuum hours", "altitude"];

const titles: Readonly<Record<string, string>> = {
  wood: "Wood",
  chamber: "In the chamber",
  vacuum: "Vacuum and air",
  resin: "Resin and dye",
  cure: "Oven and bake",
  plan: "The plan: hours and shelves",
};

/** Where one setting follows from another, so does what holds. */
const derived = (at: (name: string) => Ref): Readonly<Record<string, Formula>> => ({
  "soak hours": formula`2*${at("vacuum hours")}`,
  "wrap minutes per piece": formula`IF(${at("in the oven")}="foil",1,0)`,
  "oven surface coefficient": formula`IF(${at("in the oven")}="foil",8,IF(${at("in the oven")}="fan",20,12))`,
  "resin dye rate": formula`${at("dye rate")}`,
});

const isDate = ({ kind }: Setting) => kind === "date";

/** A number in plain units without the last digit's noise. */
const tidied = (internal: number, { kind }: Setting, units: Units) =>
  Number((kind ? fromInternal(internal, units[kind]) : internal).toPrecision(15));

function allowedFor(setting: Setting, { system, units }: Kit): Allowed | true {
  if (setting.name === "units") return { list: [system], only: true };
  if (setting.choices) return { list: [...setting.choices], only: true };
  if (isDate(setting)) return { date: true };
  if (!setting.range) return true;
  return { from: tidied(setting.range[0], setting, units), to: tidied(setting.range[1], setting, units) };
}

function rangeWords(setting: Setting, { system, units }: Kit): string {
  if (setting.name === "units") return `${system} in this file`;
  if (setting.choices) return setting.choices.join(", ");
  if (isDate(setting)) return "a date and time";
  if (!setting.range || !setting.kind) return "a whole number";
  const [least, most] = setting.range.map((end) => tidy(fromInternal(end, units[setting.kind!])));
  return `${least} to ${most}`;
}

function demoValue(name: string, kit: Kit): string | number | undefined {
  if (name === "units") return kit.system;
  if (name === "scale reads") return scale;
  if (!kit.demo || !(name in chosen)) return undefined;
  const value = chosen[name];
  if (name === "cover") return kit.of("length", value as number);
  if (name === "dye rate") return kit.of("strength", value as number, 1);
  return name === "altitude" ? kit.of("altitude", value as number) : value;
}

export interface Shop extends Equipment {
  readonly page: Page;
  /** Two columns, setting and value: what every formula takes as the shop. */
  readonly range: Ref;
  /** Where the value of a setting is typed, and where the one that holds stands. */
  readonly typed: (name: string) => Ref;
  readonly holds: (name: string) => Ref;
  /** Whether nothing holds where nothing is typed. */
  readonly isOptional: (name: string) => boolean;
}

/** The facts of the shop: the chamber first, then the settings, the eight that matter most before the rest. */
export function shopSheet(kit: Kit): Shop {
  const page = new Page(
    "My Shop",
    "The facts about your shop. Type a value into the second column and every formula follows; where it is blank, the fifth column says what holds.",
    [25, 13, 12, 46, 13, 20, 60],
    { landscape: true },
  );
  page.open("My Shop");
  page.sheet.frozen = { rows: 0, columns: 1 };
  const equipment = equipmentLines(page, kit);
  page.skip();
  const first = page.row;
  page.heading("setting", "here", "unit", "what it is", "what holds", "range", "where that comes from");
  page.sheet.print = { ...page.sheet.print, titleRow: first };
  const all = Object.values(settingsBySubject).flat();
  const groups: [string, Setting[]][] = [
    ["Eight settings first", eight.map((name) => all.find((setting) => setting.name === name)!)],
    ...Object.entries(settingsBySubject).flatMap(([subject, own]): [string, Setting[]][] => {
      const rest = own.filter(({ name }) => !eight.includes(name));
      return rest.length ? [[titles[subject], rest]] : [];
    }),
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
  const follows = derived(holds);
  const standard = readShop([
    ["units", kit.system],
    ["scale reads", scale],
  ]);
  for (const [title, own] of groups) {
    page.heading(title);
    for (const setting of own)
      settingLine(page, setting, kit, follows[setting.name] ?? standardFormula(setting, standard.get(setting), kit));
  }
  const isOptional = (setting: string) => standard.get(all.find((one) => one.name === setting)!) === undefined;
  return { page, typed, holds, isOptional, range: refTo(name, first, 0, page.row - first, 2), ...equipment };
}

/** What holds where nothing is typed; "none" where that is nothing. */
function standardFormula(setting: Setting, value: unknown, { units }: Kit): Formula {
  if (value === undefined) return formula`"none"`;
  return typeof value === "number" ? formula`${tidied(value, setting, units)}` : formula`"${String(value)}"`;
}

function settingLine(page: Page, setting: Setting, kit: Kit, standard: Formula): void {
  const { row } = page;
  const format = isDate(setting) ? "yyyy-mm-dd hh:mm" : undefined;
  const inForce = format ?? (/\d\.\d{5}/.test(standard.pieces.map(String).join("")) ? "0.0###" : undefined);
  const typed = page.line({
    label: setting.name,
    value: demoValue(setting.name, kit),
    input: allowedFor(setting, kit),
    unit: setting.kind ? kit.unit(setting.kind) : "",
    format,
    note: setting.label,
  });
  page.put(row, 4, { formula: formula`IF(${typed}="",${standard},${typed})`, look: "result", format: inForce });
  page.put(row, 5, { value: rangeWords(setting, kit), look: "note" });
  page.put(row, 6, { value: setting.basis, look: "note" });
}

import type { Arg } from "../../shared/argument";
import type { Contract } from "../../shared/contract";
import { isSetting, type Setting } from "../../shared/settings";
import { twinFormula, twinsOf } from "../../shared/twin";
import { fromInternal, plainUnits, type Units } from "../../shared/unit";
import type { System } from "../../shared/unittable";
import { namesIn } from "../../shared/working";
import { type Ask, type Edition, type Given, isRef, noShop, written } from "./formula";
import { type Ref, type Row, refText } from "./place";

/** Where an argument of a twin takes its value from when it is not given. */
export interface Habits {
  readonly units: Units;
  /** The cell with the value in use of a setting, or a formula for it. */
  readonly setting: (name: string, setting: Setting) => Ref | string | undefined;
  /** The default of a setting. */
  readonly standard: (setting: Setting, system: System) => unknown;
}

/** A value as a formula types it in plain units; a date or a quantity with its unit becomes a number. */
function typedText(value: Exclude<Given, Ref>, arg: Arg, units: Units): string | undefined {
  if (Array.isArray(value)) return undefined;
  const number = typeof value === "string" && arg.kind ? fromInternal(arg.read(value, units) as number, units[arg.kind]) : value;
  if (typeof number === "number") return number < 0 ? `(${number})` : String(number).replace("e", "E");
  return typeof number === "string" ? `"${number}"` : String(number).toUpperCase();
}

/** The units in which a question is asked: the book's, or those of the system it names in place of a shop. */
const unitsOf = ({ given: { shop } }: Ask, { units }: Habits): Units =>
  shop === noShop ? plainUnits("US") : shop === "US" || shop === "SI" ? plainUnits(shop) : units;

/** Formulas for a program without the functions: twins, where a contract has one; settings by the cells that hold them. */
export function plain(habits: Habits): Edition {
  const edition: Edition = {
    name: "plain",
    leansOn: ({ contract, given, apartFrom = [] }) =>
      given.shop === undefined || isRef(given.shop)
        ? [...Object.entries<Arg>(contract.args), ...Object.entries<Arg>(contract.shop ?? {})].flatMap(([name, arg]) =>
            isSetting(arg) && given[name] === undefined && !apartFrom.includes(name) ? [habits.setting(arg.name, arg)].filter(isRef) : [],
          )
        : [],
    write: (ask, from, row) => twinOf(ask, from, row, habits) ?? (ask.otherwise && bracketed(written(ask.otherwise, edition, from, row))),
  };
  return edition;
}

const bracketed = (text: string | undefined) => (text === undefined ? undefined : `(${text})`);

function twinOf(ask: Ask, from: string, row: Row, habits: Habits): string | undefined {
  const { contract, given, at } = ask;
  // A twin is one formula for one cell: a whole row of answers has none.
  if (!at && contract.returns.form !== "cell") return undefined;
  const [row1, column] = at ?? [1, 1];
  const twin = row1 === 1 ? twinsOf(contract)[column - 1] : undefined;
  if (!twin) return undefined;
  const names = [...new Set(namesIn(twin.text))];
  // A twin that ignores a given argument would answer another question.
  if (Object.keys(given).some((key) => key !== "shop" && !names.includes(key))) return undefined;
  const units = unitsOf(ask, habits);
  const cells: Record<string, string> = {};
  for (const name of names) {
    const text = cellText(ask, name, from, row, habits, units);
    if (text === undefined) return undefined;
    cells[name] = text;
  }
  const formula = twinFormula(contract, cells, units, column);
  const fits = names.flatMap((name) => fitting(ask, name, from, row, units));
  return formula && (fits.length ? `IF(AND(${fits.join(",")}),${formula},NA())` : `(${formula})`);
}

/** A condition in built-in syntax: the cell holds what the function accepts. A blank or a word must not count as 0. */
function fitting({ contract, given }: Ask, name: string, from: string, row: Row, units: Units): string[] {
  const value = given[name];
  const arg = argOf(contract, name);
  const { kind } = arg;
  if (!isRef(value) || !kind) return [];
  const cell = refText(value, from, row);
  const [least, most] = (arg.range ?? []).map((end) => Number(fromInternal(end, units[kind]).toPrecision(12)));
  const isInside = least === undefined ? "" : `,${cell}>=${least},${cell}<=${most}`.replaceAll("e", "E");
  const isNumber = isInside ? `AND(ISNUMBER(${cell})${isInside})` : `ISNUMBER(${cell})`;
  return [arg.optional ? `OR(${cell}="",${isNumber})` : isNumber];
}

const argOf = (contract: Contract, name: string): Arg => contract.args[name] ?? contract.shop?.[name];

function cellText({ contract, given }: Ask, name: string, from: string, row: Row, habits: Habits, units: Units): string | undefined {
  const arg = argOf(contract, name);
  const fallback = () => fallbackText(arg, given.shop !== undefined, from, row, habits, units);
  const value = given[name];
  if (value === undefined) return fallback();
  if (!isRef(value)) return typedText(value, arg, units);
  const cell = refText(value, from, row);
  const instead = arg.optional ? fallback() : undefined;
  return instead === undefined ? cell : `IF(${cell}="",${instead},${cell})`;
}

/** The value where an argument's cell is blank: the setting's cell, its default, or the argument's own default. */
function fallbackText(
  arg: Arg,
  shopless: boolean,
  from: string,
  row: Row,
  { setting, standard }: Habits,
  units: Units,
): string | undefined {
  const number = (value: unknown) =>
    typeof value === "number" ? String(arg.kind ? fromInternal(value, units[arg.kind]) : value) : undefined;
  // A word left out is an empty text.
  if (!isSetting(arg)) return arg.kind ? number(arg.otherwise) : '""';
  // A setting without a value is an empty cell, which built-in formulas count as 0.
  if (shopless) return number(standard(arg, units.system) ?? 0);
  const cell = setting(arg.name, arg);
  return typeof cell === "string" ? cell : cell && refText(cell, from, row);
}

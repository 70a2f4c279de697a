import { fractions, hourOrClock } from "../../../shared/numberformat";
import { tidy } from "../../../shared/outcome";
import type { Setting } from "../../../shared/settings";
import { fromInternal, type Units } from "../../../shared/unit";
import { shop as chosen } from "../../demo";
import type { Allowed } from "../book";
import { asksIn, type Formula, formula } from "../formula";
import { type Kit, scale } from "../kit";
import type { Page } from "../page";
import type { Ref } from "../place";
import { dayExample } from "../usdates";
import { refuses } from "./judged";

/** Settings that are fixed when a file is made: its formulas are written for them. */
export const fixed = ({ system }: Kit): Readonly<Record<string, string>> => ({ units: system, "scale reads": scale });

/** Hours of the day, where a clock time may be typed as well. */
const hours = new Set(["opens", "closes"]);

const isDate = ({ kind }: Setting) => kind === "date";

/** Settings that take words: built-in formulas cannot check them. */
const isWords = ({ choices, range, kind }: Setting) => !choices && !range && kind !== "count" && kind !== "date";

/** A number in plain units without the last digit's noise. */
const tidied = (internal: number, { kind }: Setting, units: Units) =>
  Number((kind ? fromInternal(internal, units[kind]) : internal).toPrecision(15));

function allowedFor(setting: Setting, kit: Kit): Allowed | true {
  const { units } = kit;
  if (setting.name in fixed(kit)) return { list: [fixed(kit)[setting.name]], only: true };
  if (setting.choices) return { list: [...setting.choices], only: true };
  if (isDate(setting)) return { date: true };
  if (!setting.range) return true;
  return { from: tidied(setting.range[0], setting, units), to: tidied(setting.range[1], setting, units) };
}

function rangeWords(setting: Setting, kit: Kit): string {
  const { units } = kit;
  if (setting.name in fixed(kit)) return `${fixed(kit)[setting.name]} in this file`;
  if (setting.choices) return setting.choices.join(", ");
  if (isDate(setting)) return "a date and time";
  if (isWords(setting)) return `such as ${setting.example}`;
  if (!setting.range || !setting.kind) return "a whole number";
  const [least, most] = setting.range.map((end) => tidy(fromInternal(end, units[setting.kind!])));
  return `${least} to ${most}`;
}

function demoValue(name: string, kit: Kit): string | number | undefined {
  if (name in fixed(kit)) return fixed(kit)[name];
  if (!kit.demo || !(name in chosen)) return undefined;
  const value = chosen[name];
  if (["cover", "tub", "tub height"].includes(name)) return kit.of("length", value as number);
  if (name === "dye rate") return kit.of("strength", value as number, 1);
  return name === "altitude" ? kit.of("altitude", value as number) : value;
}

/** The value in use where nothing is typed; "none" where there is no default. */
export function standardFormula(setting: Setting, value: unknown, { units }: Kit): Formula {
  if (value === undefined) return formula`"none"`;
  if (typeof value === "object" && setting.say) return formula`"${setting.say(value, units)}"`;
  return typeof value === "number" ? formula`${tidied(value, setting, units)}` : formula`"${String(value)}"`;
}

/** When a value is wrong, and what to do about it. */
type Wrong = readonly [when: Formula, words: string];

/** What to type in place of a value that cannot be: built-in formulas take it as it comes, the functions refuse it wherever it counts. */
export function cannotBe(typed: Ref, allowed: Allowed | true, { system }: Kit): Wrong {
  const filled = (fits: Formula): Formula => formula`IF(${typed}="",FALSE,IF(${fits},FALSE,TRUE))`;
  if (allowed !== true && "from" in allowed) {
    const { from, to } = allowed;
    return [
      filled(formula`IF(ISNUMBER(${typed}),AND(${typed}>=${from},${typed}<=${to}),FALSE)`),
      `type a plain number from ${tidy(from)} to ${tidy(to)}`,
    ];
  }
  if (allowed !== true && "list" in allowed && Array.isArray(allowed.list)) {
    const isOne = allowed.list.map((word) => `${word}`);
    const fits = isOne.reduceRight<Formula>((rest, word) => formula`IF(${typed}="${word}",TRUE,${rest})`, formula`FALSE`);
    return [filled(fits), `type ${isOne.join(" or ")}`];
  }
  return [
    filled(formula`ISNUMBER(${typed})`),
    allowed !== true && "date" in allowed ? `type a day, such as ${dayExample(system)}` : "type a plain number",
  ];
}

/** Words are judged by a function that takes this one line for the whole shop; the built-in form takes them as they come. */
function unreadable(setting: Setting, typed: Ref): Wrong {
  const line = { ...typed, column: typed.column - 1, columns: 2 };
  return [formula`IF(${typed}="",FALSE,${refuses(line)})`, `type a value such as ${setting.example}`];
}

/** One setting: typed here, with what it is, what holds, its range and where that comes from. */
export function settingLine(page: Page, setting: Setting, kit: Kit, standard: Formula, missing?: Wrong): void {
  const { row } = page;
  const format = isDate(setting) ? "yyyy-mm-dd hh:mm" : hours.has(setting.name) ? hourOrClock : undefined;
  const inInches = setting.kind === "length" && kit.system === "US" ? fractions : undefined;
  const inForce = format ?? inInches ?? (/\d\.\d{5}/.test(standard.pieces.map(String).join("")) ? "0.0###" : undefined);
  const allowed = allowedFor(setting, kit);
  const typed = page.line({
    label: setting.name,
    value: demoValue(setting.name, kit),
    input: allowed,
    unit: setting.kind ? kit.unit(setting.kind) : "",
    format,
  });
  const holds = page.put(row, 4, { formula: formula`IF(${typed}="",${standard},${typed})`, look: "result", format: inForce });
  const due = fixed(kit)[setting.name];
  const wrong: Wrong = due ? [formula`${holds}<>"${due}"`, `type ${due}: this file is made for it`] : cannotBe(typed, allowed, kit);
  const judged = due || !isWords(setting) ? [wrong] : [unreadable(setting, typed)];
  const wrongs = missing ? [missing, ...judged] : judged;
  const note = wrongs.reduceRight<Formula>((rest, [when, words]) => formula`IF(${when},"${words}",${rest})`, formula`"${setting.label}"`);
  const said = page.put(row, 3, { formula: note, look: "note" });
  for (const [when, words] of wrongs) page.alert("bad", due ? holds : typed, asksIn(when).length ? formula`${said}="${words}"` : when);
  page.put(row, 5, { value: rangeWords(setting, kit), look: "note" });
  page.put(row, 6, { value: setting.basis, look: "note" });
}

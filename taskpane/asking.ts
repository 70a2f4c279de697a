import type { Cells } from "../shared/columns";
import type { Contract } from "../shared/contract";
import { type Entries, type Entry, type Field, fieldsOf, formulaOf, isAbout, isMany, isMissing, meantOf, troubleOf } from "../shared/form";
import { isFault, type Outcome } from "../shared/outcome";
import type { Shop } from "../shared/settings";
import { call, cellName, readShop } from "../src/catalogue";
import { isScreen } from "./answer";

/** The shop's table as the workbook names it. */
export const shopName = "MyShop";

/** Which shop a form counts for. */
export type ShopChoice = "US" | "SI" | typeof shopName;

/** The state of a form: what is filled in, and the answer. */
export interface Asked {
  readonly fields: readonly Field[];
  readonly shop: Shop;
  /** Words under each field at fault. */
  readonly troubles: Readonly<Record<string, string>>;
  /** Labels of what is still to be typed. */
  readonly missing: readonly string[];
  /** Undefined until all is there and sound. */
  readonly answer?: readonly (readonly Outcome[])[];
  /** The answer is empty because the cells that it refers to are blank. */
  readonly blank?: boolean;
  /** A fault that belongs to no field. */
  readonly trouble?: string;
  readonly formula: string;
  /** More than one piece is asked about. */
  readonly many: boolean;
}

/** A shop table that cannot be read is told once; meanwhile the default units apply. */
function shopFrom(cells: Cells | undefined): { shop: Shop; fault?: string } {
  try {
    return { shop: readShop(cells) };
  } catch (trouble) {
    const told = (trouble as { in?: (units: Shop["units"]) => { message: string } }).in?.(readShop(undefined).units);
    return { shop: readShop(undefined), fault: told?.message ?? "the My Shop table cannot be read" };
  }
}

const shopWords: Readonly<Record<ShopChoice, string | undefined>> = { US: undefined, SI: '"SI"', [shopName]: shopName };

function formula(contract: Contract, fields: readonly Field[], entries: Entries, choice: ShopChoice): string {
  return formulaOf(cellName(contract), fields, entries, contract.shop ? shopWords[choice] : undefined);
}

/** The cells of the shop argument of a call. */
export const shopCells = (choice: ShopChoice, table: Cells | undefined): Cells | undefined =>
  choice === "US" ? undefined : choice === "SI" ? [["SI"]] : table;

/** Evaluates a form; called at every keystroke. */
export function ask(contract: Contract, entries: Entries, choice: ShopChoice, table: Cells | undefined): Asked {
  const cells = contract.shop ? shopCells(choice, table) : undefined;
  const { shop, fault } = shopFrom(cells);
  const fields = fieldsOf(contract, shop);
  const given = fields.map((field) => meantOf(field, entries[field.name]));
  const troubles: Record<string, string> = {};
  for (const field of fields) {
    const trouble = troubleOf(field, entries[field.name], shop.units);
    if (trouble) troubles[field.name] = trouble;
  }
  const missing = fields.filter((field) => isMissing(field, entries[field.name])).map(({ label }) => label);
  const base = { fields, shop, troubles, missing, formula: formula(contract, fields, entries, choice), many: false };
  if (fault) return { ...base, trouble: fault };
  if (missing.length || Object.keys(troubles).length) return base;
  const answer = call(contract, contract.shop ? [...given, cells] : given);
  const many = contract.per === "piece" && given.some(isMany);
  const [only] = answer.length === 1 ? answer[0] : [];
  if (!isFault(only) || isScreen(contract)) return { ...base, answer, many, blank: answer.flat().every((cell) => cell === "") };
  const about = fields.find((field) => isAbout(field, only.message));
  return about ? { ...base, troubles: { [about.name]: only.message } } : { ...base, trouble: only.message };
}

/** Entries to keep as a draft: a reference without its cells, which are read again. */
export type Kept = Readonly<Record<string, { readonly typed: string } | { readonly reference: string }>>;

export const keptOf = (entries: Entries): Kept =>
  Object.fromEntries(
    Object.entries(entries).flatMap(([name, entry]) => {
      if (!entry) return [];
      return [[name, entry.reference === undefined ? { typed: entry.typed } : { reference: entry.reference }]];
    }),
  );

/** Entries with the cells of their references read anew. */
export async function reread(entries: Kept | Entries, read: (reference: string) => Promise<Cells | undefined>): Promise<Entries> {
  const pairs = await Promise.all(
    Object.entries(entries).map(async ([name, entry]): Promise<[string, Entry | undefined]> => {
      if (!entry || !("reference" in entry) || entry.reference === undefined) return [name, entry as Entry | undefined];
      const cells = await read(entry.reference);
      return [name, cells ? { reference: entry.reference, cells } : undefined];
    }),
  );
  return Object.fromEntries(pairs);
}

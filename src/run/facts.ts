import { type Cell, isFault, type Outcome } from "../../shared/outcome";
import type { Answers, ShopRows } from "./answers";
import type { Found, Given } from "./found";
import type { Piece } from "./schema";
import { fresh, stockFacts } from "./stock";

const settingNames = [
  ...["vacuum hours", "soak hours", "loading minutes", "wrap minutes per piece", "opens", "closes", "days off"],
  ...["oven", "core", "in the oven", "scale reads", "tub", "drips", "resin density"],
  ...["dye rate", "resin on hand", "resin dye rate", "resin mixed on"],
];

/** The resin on hand. */
const stockNames = ["resin on hand", "resin dye rate", "resin mixed on"];

/** Share of the deepest reading that the gauge should reach: common practice, no source. */
const enough = 0.97;
/** A setting from 0 to 1 is a time of day, anything else an hour. */
const asHour = (value: number): number => (value < 1 ? value * 24 : value);

const cubicInch = 16.387064;
const gramsIn: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };

/** Works out all the numbers of a run by the functions themselves; what has no answer says why. */
export function factsOf(given: Given, { ask, holds }: Answers): Found {
  const facts: Found["facts"] = {};
  const faults: Found["faults"] = {};
  const put = (name: string, outcome: Outcome | undefined): number | undefined => {
    if (outcome === undefined || outcome === "") return undefined;
    if (isFault(outcome)) faults[name] ??= outcome.message || `it shows ${outcome.error}`;
    else if (typeof outcome !== "boolean") facts[name] = outcome;
    return typeof outcome === "number" ? outcome : undefined;
  };
  try {
    for (const name of settingNames) {
      const value = holds(name, given.shop);
      if (typeof value === "number") facts[name] = name === "opens" || name === "closes" ? asHour(value) : value;
      else if (typeof value === "string" && value) facts[name] = value;
    }
  } catch (trouble) {
    faults.shop = wordsOf(trouble);
    return { facts, faults };
  }
  const full = put("gauge", ask("FULLVACUUM", {}, given.shop)[0][0]);
  if (full !== undefined) facts["gauge at least"] = enough * full;
  given.loads.forEach(({ pieces }, i) => {
    const load = i + 1;
    weights(pieces, load, given, { ask, holds }, facts, put);
    const line = loadLine(pieces, given, ask, faults, load);
    if (!line) return;
    for (const [name, title] of Object.entries(titles)) put(`${name} ${load}`, pick(line, title));
    if (!(Number(facts["resin on hand"] ?? 0) > 0)) return;
    const shop = given.shop.filter(([name]) => !stockNames.includes(name));
    const bare = loadLine(pieces, { ...given, shop }, ask, faults, load);
    for (const name of ["pour", "add"] as const) if (bare) put(`${fresh}${name} ${load}`, pick(bare, titles[name]));
  });
  if (!Object.keys(faults).some((name) => name.startsWith("pour"))) stockFacts(given, facts, put, ask);
  return { facts, faults };
}

const wordsOf = (trouble: unknown): string => (trouble instanceof Error ? trouble.message : "a setting on My Shop is wrong");

/** Headings of the plan's columns, by the names of a run's facts. */
const titles = {
  pour: ["to pour"],
  add: ["to add"],
  uptake: ["taken up"],
  bake: ["bake minutes"],
  solids: ["solids"],
} as const;

type Line = ReadonlyMap<string, Outcome>;
const pick = (line: Line, names: readonly string[]): Outcome | undefined =>
  names.map((name) => line.get(name)).find((value) => value !== undefined);

/** A piece's specific gravity by its own weight if it was weighed, else its wood. */
function woodOf({ wood, dry, thickness, width, length }: Piece, { system, shop }: Given, ask: Answers["ask"]): Cell {
  // Typed in the place of a wood, a number says how dense it is.
  if (!dry) return /^\d*\.?\d+$/.test(wood.trim()) ? Number(wood) : wood;
  const volume = (thickness * width * length) / (system === "US" ? 1 : 1000);
  const gravity = ask("PIECEGRAVITY", { weight: dry, volume }, shop)[0][0];
  return typeof gravity === "number" ? gravity : wood;
}

/** The line of the plan for one load alone; a fault where it takes more than one, or none. */
function loadLine(pieces: readonly Piece[], given: Given, ask: Answers["ask"], faults: Found["faults"], load: number): Line | undefined {
  const rows = pieces.map((piece): Cell[] => {
    const { name, count, thickness, width, length } = piece;
    return [name || piece.wood, count, thickness, width, length, woodOf(piece, given, ask), "", piece.fullness];
  });
  const [head, ...lines] = ask("PLAN", { pieces: rows, chamber: given.chamber, height: given.height }, given.shop);
  const fail = (words: string) => {
    faults[`pour ${load}`] = words;
    faults[`bake ${load}`] = words;
    return undefined;
  };
  if (!lines.length) return fail(isFault(head[0]) ? head[0].message : "nothing to plan: type a count and three sizes");
  const bad = lines.find((line) => line.some(isFault) && !isNumber(line[0]));
  if (bad) return fail(`${String(bad[0])}: ${bad.find(isFault)!.message}`);
  if (lines.length > 1) return fail(`does not fit into one load: it takes ${lines.length}. Take pieces out, or add a load`);
  return new Map(head.map((title, i) => [String(title), lines[0][i]]));
}

const isNumber = (outcome: Outcome): boolean => typeof outcome === "number";

/** Weight, ballast, bake and cooling of one load. */
function weights(
  pieces: readonly Piece[],
  load: number,
  given: Given,
  { ask, holds }: Pick<Answers, "ask" | "holds">,
  facts: Found["facts"],
  put: (name: string, outcome: Outcome | undefined) => number | undefined,
): void {
  const { system, shop } = given;
  const unit = gramsIn[String(holds("scale reads", shop) ?? "g")] ?? 1;
  let dry = 0;
  let ballast = 0;
  let solid = 0;
  let grams = 0;
  for (const piece of pieces) {
    const { thickness, width, length, count } = piece;
    const volume = (thickness * width * length) / (system === "US" ? 1 : 1000);
    const wood = woodOf(piece, given, ask);
    const gravity = typeof wood === "number" ? wood : put(`dry ${load}`, ask("GRAVITY", { species: wood }, shop)[0][0]);
    if (gravity === undefined) return;
    const each = piece.dry || (gravity * volume * (system === "US" ? cubicInch : 1)) / unit;
    dry += each * count;
    solid += volume * count;
    grams += each * count * unit;
    const held = ask("BALLAST", { solids: volume * count, weight: each * count }, shop)[0][0];
    if (put(`ballast ${load}`, held) === undefined) return;
    ballast += held as number;
    ends(piece, gravity, load, given, ask, facts);
    const cool = put("cooling", ask("COOLDOWN", { thickness, width, length, gravity }, shop)[0][0]);
    if (cool !== undefined) facts[`cool ${load}`] = Math.max(Number(facts[`cool ${load}`] ?? 0), cool);
  }
  facts[`dry ${load}`] = dry;
  facts[`ballast ${load}`] = ballast;
  facts[`volume ${load}`] = solid;
  facts[`drips ${load}`] = dripsOf(pieces, given, Number(facts.drips ?? 0));
  facts[`gravity ${load}`] = grams / (solid * (system === "US" ? cubicInch : 1));
  if (pieces.length !== 1) return;
  const [{ thickness, width, length, count }] = pieces;
  const { chamber, height } = given;
  const [way, layers, stack] = ask("ARRANGE", { chamber, height, thickness, width, length, count }, shop)[0];
  for (const [name, value] of Object.entries({ way, layers, stack })) if (!isFault(value)) put(`${name} ${load}`, value);
}

/** The likely range of the bake of a load's slowest piece, and how far the lightest one can heat itself. */
function ends(
  { thickness, width, length, fullness }: Piece,
  gravity: number,
  load: number,
  { shop }: Given,
  ask: Answers["ask"],
  facts: Found["facts"],
): void {
  const keepMost = (name: string, outcome: Outcome) => {
    if (typeof outcome === "number") facts[name] = Math.max(Number(facts[name] ?? 0), outcome);
  };
  const own: ShopRows = fullness === undefined ? shop : [...shop, ["fullness", fullness]];
  const at = (end: string) => ask("BAKE", { thickness, width, length, gravity }, [...own, ["bake by", end]])[0][0];
  keepMost(`bake least ${load}`, at("short end"));
  const most = at("long end");
  // At the long end the oven may never bring the core up to temperature: then the load has no upper limit either.
  if (typeof most === "number") keepMost(`bake most ${load}`, most);
  else facts[`bake open ${load}`] = 1;
  keepMost(`rise ${load}`, ask("SELFHEAT", { gravity }, own)[0][0]);
}

/** Resin that stays on the faces as a film of so many millimeters. */
function dripsOf(pieces: readonly Piece[], { system }: Given, film: number): number {
  const inch = system === "US" ? 25.4 : 1;
  const faces =
    pieces.reduce((sum, { thickness: a, width: b, length: c, count }) => sum + 2 * (a * b + a * c + b * c) * count, 0) * inch ** 2;
  return (faces * film) / 1e6 / (system === "US" ? 0.946352946 : 1);
}

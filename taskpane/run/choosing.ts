import { capital } from "../../shared/capital";
import type { Answers } from "../../src/run/answers";
import type { Choice } from "../../src/run/making";
import { mostLoads, type Piece } from "../../src/run/schema";
import { fullnessOf, type Sources, withoutTub } from "../sources";
import { two } from "../today";

/** A row of pieces as it is chosen or typed. */
export interface Row {
  /** A row of Blanks, or "" where the piece is typed. */
  readonly pick: string;
  readonly count: string;
  readonly name: string;
  readonly wood: string;
  readonly sizes: readonly [string, string, string];
}

/** The form of a run, as typed so far. */
export interface Draft {
  readonly loads: readonly (readonly Row[])[];
  readonly together: boolean;
  readonly color: string;
  readonly chamber: string;
  readonly height: string;
  readonly how: "now" | "demo";
  /** As a browser writes it: 2026-03-14T14:00. */
  readonly at: string;
}

export const blankRow: Row = { pick: "", count: "1", name: "", wood: "", sizes: ["", "", ""] };

const rowOf = (piece: Piece, { blanks }: Sources): Row =>
  blanks.some(({ name }) => name === piece.name)
    ? { ...blankRow, pick: piece.name, count: String(piece.count) }
    : {
        pick: "",
        count: String(piece.count),
        name: piece.name,
        wood: piece.wood,
        sizes: [piece.thickness, piece.width, piece.length].map(String) as never,
      };

const typedMoment = (at: number): string => {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
};

/** The form at first: as on the sheet Today, else with the first row of Blanks. */
export function firstDraft(sources: Sources): Draft {
  const { today, blanks } = sources;
  const loads = today.loads.length ? today.loads : [blanks.slice(0, 1)];
  const demo = today.demo !== undefined && today.demo > Date.now() ? today.demo : undefined;
  return {
    loads: loads.map((load) => (load.length ? load.map((piece) => rowOf(piece, sources)) : [blankRow])),
    together: false,
    color:
      today.color ||
      colorOf(
        loads.map((load) => load.map((piece) => rowOf(piece, sources))),
        sources,
      ),
    chamber: sources.chamber === undefined ? "" : String(sources.chamber),
    height: sources.height === undefined ? "" : String(sources.height),
    how: demo === undefined ? "now" : "demo",
    at: demo === undefined ? "" : typedMoment(demo),
  };
}

const wordsFor = (color: string): string => color.trim() || "no color";
const sameColor = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The color that Blanks has for what was picked first. */
function colorOf(loads: Draft["loads"], { blanks }: Sources): string {
  const picks = loads.flat().flatMap(({ pick }) => blanks.find(({ name }) => pick !== "" && name === pick) ?? []);
  return picks.find(({ color }) => color !== undefined)?.color ?? "";
}

/** Other pieces bring their color along, unless one was typed. */
export const withLoads = (draft: Draft, loads: Draft["loads"], sources: Sources): Draft => ({
  ...draft,
  loads,
  color: sameColor(draft.color, colorOf(draft.loads, sources)) ? colorOf(loads, sources) : draft.color,
});

/** What is wrong with the form, at the field that it is about. */
export interface Slip {
  readonly field: string;
  readonly words: string;
}

function pieceOf(row: Row, id: string, { blanks, shop }: Sources, { length }: Answers): Piece | Slip {
  const count = Number(row.count);
  if (!Number.isInteger(count) || count < 1 || count > 10_000)
    return { field: `${id}-count`, words: "How many? Type a whole number, 1 or more." };
  const picked = blanks.find(({ name }) => row.pick !== "" && name === row.pick);
  if (picked) {
    const { problem, isLeftOut: _, ...piece } = picked;
    return problem ? { field: `${id}-pick`, words: `Blanks says of these: ${problem}.` } : { ...piece, count };
  }
  const labels = ["thickness", "width", "length"] as const;
  const sizes: number[] = [];
  for (const [i, label] of labels.entries()) {
    const size = length(row.sizes[i].trim(), label, shop);
    if (typeof size === "string") return { field: `${id}-${label}`, words: `${capital(size)}.` };
    sizes.push(size);
  }
  if (!row.wood.trim()) return { field: `${id}-wood`, words: "Which wood? Type its name, such as sugar maple." };
  const [thickness, width, deep] = sizes;
  const fullness = fullnessOf(row.wood, blanks);
  return {
    name: (row.name || row.wood).trim().slice(0, 300),
    wood: row.wood.trim().slice(0, 300),
    ...{ count, thickness, width, length: deep },
    ...(fullness === undefined ? {} : { fullness }),
  };
}

const isSlip = (one: Piece | Slip): one is Slip => "field" in one;

/** The run as chosen, or the first fault of the form. */
export function choiceOf(draft: Draft, sources: Sources, answers: Answers, now: number): Choice | Slip {
  const loads: { pieces: Piece[] }[] = [];
  for (const [i, rows] of draft.loads.slice(0, mostLoads).entries()) {
    const pieces: Piece[] = [];
    for (const [j, row] of rows.entries()) {
      const piece = pieceOf(row, `run-${i}-${j}`, sources, answers);
      if (isSlip(piece)) return piece;
      const other = [...loads.flatMap((load) => load.pieces), ...pieces].find(({ color }) => color !== undefined);
      if (piece.color !== undefined && other?.color !== undefined && !sameColor(piece.color, other.color))
        return {
          field: `run-${i}-${j}-pick`,
          words: `Blanks has ${wordsFor(piece.color)} for these and ${wordsFor(other.color)} for ${other.name}. One run takes one color of resin: run them one after the other.`,
        };
      pieces.push(piece);
    }
    loads.push({ pieces });
  }
  const sides = { chamber: "inside diameter of the chamber", height: "inside height of the chamber" };
  const tray = /[x×*]/i.test(draft.chamber);
  const chamber = tray ? draft.chamber.trim() : answers.length(draft.chamber.trim(), sides.chamber, sources.shop);
  if (!tray && typeof chamber === "string") return { field: "run-chamber", words: `${capital(chamber)}.` };
  const height = answers.length(draft.height.trim(), sides.height, sources.shop);
  if (typeof height === "string") return { field: "run-height", words: `${capital(height)}.` };
  const at = draft.how === "now" ? now : new Date(draft.at).getTime();
  if (Number.isNaN(at)) return { field: "run-at", words: "When does the demo begin? Give a day and a time." };
  return {
    id: `run-${now.toString(36)}-${Math.floor(Math.random() * 1e6).toString(36)}`,
    system: sources.system,
    shop: (draft.chamber === String(sources.chamber) ? sources.shop : withoutTub(sources.shop)) as Choice["shop"],
    chamber,
    height,
    ...(sources.pumpRate ? { pumpRate: sources.pumpRate } : {}),
    color: draft.color.trim().slice(0, 300),
    together: draft.together ? loads.length : 1,
    begins: { how: draft.how, at },
    offset: -new Date(at).getTimezoneOffset(),
    loads,
  };
}

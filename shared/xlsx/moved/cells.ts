import { type At, addressOf, isIn } from "../address";
import { type FileCell, type FileRow, rowsOf } from "../cells";
import { movedFormula as filledDown } from "../filldown";
import { type Move, movedBlock, movedFormula } from "../move";
import { retagged, tagWith } from "../retag";
import { type Change, escaped } from "../xml";
import { movedRange, shifts } from "./ranges";

/** What a move does to the cells of a sheet. */
export interface MovedCells {
  readonly changes: readonly Change[];
  /** Cells, where they are now, whose formulas reach other cells than before. */
  readonly resized: readonly string[];
}

/** The formula in full: of a shared formula only the first cell holds the text. */
export function fullFormula({ formula, row, column }: FileCell, firsts: ReadonlyMap<string, FileCell>): string {
  if (formula!.kind !== "shared" || formula!.text) return formula!.text;
  const first = firsts.get(formula!.shared ?? "");
  return first ? filledDown(first.formula!.text, { row: row - first.row, column: column - first.column }) : "";
}

export const firstsOf = (rows: readonly FileRow[]): ReadonlyMap<string, FileCell> =>
  new Map(
    rows.flatMap(({ cells }) =>
      cells.filter(({ formula }) => formula?.shared && formula.text).map((cell) => [cell.formula!.shared!, cell]),
    ),
  );

const movedAt = ({ row, column }: At, move: Move): At | undefined => {
  const block = movedBlock({ top: row, bottom: row, left: column, right: column }, move);
  return block && { row: block.top, column: block.left };
};

/** Cells that were cut and put elsewhere on the sheet stand in other rows of its file. */
function replanted(
  xml: string,
  rows: readonly FileRow[],
  move: Extract<Move, { kind: "block" }>,
  textOf: (cell: FileCell) => string,
): Change[] {
  const changes: Change[] = [];
  const { block, to } = move;
  const landing = {
    top: to.row,
    left: to.column,
    bottom: to.row + block.bottom - block.top,
    right: to.column + block.right - block.left,
  };
  const moving = new Map<number, [number, string][]>();
  const stays = to.sheet === move.sheet;
  for (const { cells } of rows)
    for (const cell of cells) {
      const leaves = isIn(block, cell);
      if (leaves && stays) {
        const at = movedAt(cell, move)!;
        if (!moving.has(at.row)) moving.set(at.row, []);
        moving.get(at.row)!.push([at.column, textOf(cell)]);
      }
      if (leaves || (stays && isIn(landing, cell))) changes.push({ start: cell.start, end: cell.end, text: "" });
    }
  const there = new Map(rows.map((row) => [row.row, row]));
  const data = /<((?:\w+:)?)sheetData\s*>/.exec(xml);
  for (const [number, cells] of [...moving].sort((a, b) => a[0] - b[0])) {
    const row = there.get(number);
    const text = (list: typeof cells) =>
      list
        .sort((a, b) => a[0] - b[0])
        .map(([, one]) => one)
        .join("");
    if (!row) {
      const place = rows.find((one) => one.row > number)?.start ?? rows.at(-1)?.end ?? data!.index + data![0].length;
      changes.push({ start: place, end: place, text: `<${data![1]}row r="${number + 1}">${text(cells)}</${data![1]}row>` });
    } else if (row.closed) {
      const open = retagged(xml, row, { spans: undefined }).text.replace(/\s*\/>$/, ">");
      changes.push({ start: row.start, end: row.end, text: `${open}${text(cells)}</${row.prefix}row>` });
    } else {
      changes.push(retagged(xml, row, { spans: undefined }));
      const byPlace = new Map<number, typeof cells>();
      for (const one of cells) {
        const place = row.cells.find((cell) => cell.column > one[0])?.start ?? row.cells.at(-1)?.end ?? row.open;
        byPlace.set(place, [...(byPlace.get(place) ?? []), one]);
      }
      for (const [place, list] of byPlace) changes.push({ start: place, end: place, text: text(list) });
    }
  }
  return changes;
}

export function movedCells(xml: string, own: string, move: Move, rows: readonly FileRow[] = rowsOf(xml, [])): MovedCells {
  const changes: Change[] = [];
  const resized: string[] = [];
  const here = shifts(own, move);
  const firsts = firstsOf(rows);
  const formulas = new Map<FileCell, string>();
  const groups = new Map<string, { cells: FileCell[]; parts: boolean }>();
  const at = (cell: FileCell) => (here ? movedAt(cell, move) : cell);

  for (const { cells } of rows)
    for (const cell of cells) {
      if (!cell.formula) continue;
      const { kind, shared } = cell.formula;
      const text = fullFormula(cell, firsts);
      // A reference to another sheet says its name.
      const moved = here || text.includes("!") ? movedFormula(text, own, move) : { formula: text, resized: false };
      formulas.set(cell, moved.formula);
      const place = at(cell);
      if (moved.resized && place) resized.push(addressOf(place));
      if (kind !== "shared") continue;
      const group = groups.get(shared ?? "") ?? { cells: [], parts: false };
      groups.set(shared ?? "", group);
      group.cells.push(cell);
      group.parts ||= moved.formula !== text || place?.row !== cell.row || place?.column !== cell.column;
    }

  const formulaTag = (cell: FileCell): string | undefined => {
    const { formula, prefix } = cell;
    if (!formula) return undefined;
    const was = xml.slice(formula.start, formula.end);
    const text = formulas.get(cell)!;
    if (formula.kind === "shared") return groups.get(formula.shared ?? "")!.parts ? `<${prefix}f>${escaped(text)}</${prefix}f>` : undefined;
    if (text === formula.text && !here) return undefined;
    const open = was.slice(0, was.indexOf(">") + 1);
    let tag = open;
    if (here && formula.kind !== "plain")
      for (const name of ["ref", "r1", "r2"]) {
        const range = new RegExp(`\\s${name}="([^"]*)"`).exec(open)?.[1];
        if (range) tag = tagWith(tag, { [name]: movedRange(range, move) || range });
      }
    if (text === formula.text) return tag === open ? undefined : tag + was.slice(open.length);
    return `${tag}${escaped(text)}</${prefix}f>`;
  };

  /** A cell as text, at its new place. */
  const whole = (cell: FileCell): string => {
    const { open, end, formula } = cell;
    const tag = retagged(xml, cell, { r: addressOf(at(cell)!) }).text;
    const f = formulaTag(cell);
    return f === undefined ? tag + xml.slice(open, end) : tag + xml.slice(open, formula!.start) + f + xml.slice(formula!.end, end);
  };

  if (here && move.kind === "block") {
    const leaves = replanted(xml, rows, move, whole);
    const gone = new Set(leaves.filter(({ start, end }) => start !== end).map(({ start }) => start));
    changes.push(...leaves);
    for (const cell of formulas.keys()) {
      const f = gone.has(cell.start) ? undefined : formulaTag(cell);
      if (f !== undefined) changes.push({ start: cell.formula!.start, end: cell.formula!.end, text: f });
    }
    return { changes, resized };
  }
  for (const row of rows) {
    const line = here && move.kind === "lines" && move.axis === "row" ? movedAt({ row: row.row, column: 0 }, move) : { row: row.row };
    if (!line) {
      changes.push({ start: row.start, end: row.end, text: "" });
      continue;
    }
    const across = here && move.kind === "lines" && move.axis === "column";
    if (line.row !== row.row) changes.push(retagged(xml, row, { r: line.row + 1 }));
    else if (across && / spans\s*=/.test(xml.slice(row.start, row.open))) changes.push(retagged(xml, row, { spans: undefined }));
    for (const cell of row.cells) {
      const place = at(cell);
      if (!place) {
        changes.push({ start: cell.start, end: cell.end, text: "" });
        continue;
      }
      if (place.row !== cell.row || place.column !== cell.column) changes.push(retagged(xml, cell, { r: addressOf(place) }));
      const f = formulaTag(cell);
      if (f !== undefined) changes.push({ start: cell.formula!.start, end: cell.formula!.end, text: f });
    }
  }
  return { changes, resized };
}

import { isIn } from "../address";
import { type Move, most, movedEnds, movedFormula } from "../move";
import { retagged } from "../retag";
import { scan, type Tag } from "../scan";
import { type Change, changed } from "../xml";
import { shifts } from "./ranges";

interface Corner {
  readonly value: number;
  readonly start: number;
  readonly end: number;
}

type Corners = Record<string, Corner>;

/** A span of rows or columns after a move; if all of them were deleted, a picture stays where they were. */
function ends(first: number, last: number, grows: boolean, { axis, at, by }: Extract<Move, { kind: "lines" }>): readonly [number, number] {
  const [from, to] = movedEnds(first, last, at, by, most[axis]) ?? [at, at];
  return grows ? [from, to] : [from, Math.min(from + last - first, most[axis] - 1)];
}

/** Pictures, charts and shapes of a sheet's drawing move, and grow where they are said to, with the cells below them. */
export function movedDrawing(xml: string, own: string, move: Move): string {
  const changes: Change[] = [];
  const here = shifts(own, move) && move.kind === "lines";
  const path: Tag[] = [];
  let corners: Corners = {};
  let text = "";
  scan(xml, {
    open(tag) {
      path.push(tag);
      text = "";
      if (/^(?:two|one)CellAnchor$/.test(tag.local) || tag.local === "anchor") corners = {};
      const link = tag.attribute("textlink");
      if (link) {
        const { formula } = movedFormula(link, own, move);
        if (formula !== link) changes.push(retagged(xml, tag, { textlink: formula }));
      }
    },
    text(more) {
      text += more;
    },
    close(tag, end) {
      path.pop();
      const corner = path.at(-1)?.local;
      if ((tag.local === "row" || tag.local === "col") && (corner === "from" || corner === "to"))
        corners[`${corner} ${tag.local}`] = { value: Number(text), start: tag.open, end: xml.lastIndexOf("</", end - 1) };
      if (!here || !/^(?:two|one)CellAnchor$/.test(tag.local)) return;
      const name = move.axis === "row" ? "row" : "col";
      const [from, to] = [corners[`from ${name}`], corners[`to ${name}`]];
      if (!from || tag.attribute("editAs") === "absolute") return;
      const grows = tag.local === "twoCellAnchor" && (tag.attribute("editAs") ?? "twoCell") === "twoCell";
      const [first, last] = ends(from.value, to?.value ?? from.value, grows, move);
      if (first !== from.value) changes.push({ start: from.start, end: from.end, text: String(first) });
      if (to && last !== to.value) changes.push({ start: to.start, end: to.end, text: String(last) });
    },
  });
  return changed(xml, changes);
}

/** Shapes of notes whose cells are gone. */
function withoutNotes(xml: string, move: Extract<Move, { kind: "lines" }>): string {
  return xml.replace(/<v:shape\s(?:(?!<\/v:shape>)[\s\S])*<\/v:shape>\s*/g, (shape) => {
    if (!/<x:ClientData\s+ObjectType="Note"/.test(shape)) return shape;
    const line = new RegExp(`<x:${move.axis === "row" ? "Row" : "Column"}>\\s*(\\d+)`).exec(shape)?.[1];
    return line !== undefined && !movedEnds(Number(line), Number(line), move.at, move.by, most[move.axis]) ? "" : shape;
  });
}

/** The drawing of notes and controls is of an older kind, and often not even well formed. */
export function movedShapes(xml: string, own: string, move: Move): string {
  const left = shifts(own, move) && move.kind === "lines" && move.by < 0 ? withoutNotes(xml, move) : xml;
  const linked = left.replace(
    /(<x:Fmla\w+>)([^<]*)(?=<)/g,
    (_, open: string, text: string) => open + movedFormula(text, own, move).formula,
  );
  if (!shifts(own, move)) return linked;
  const line = (value: number, axis: "row" | "column") =>
    move.kind === "lines" && move.axis === axis ? (movedEnds(value, value, move.at, move.by, most[axis])?.[0] ?? value) : value;
  const cell = (row: number, column: number): [number, number] => {
    if (move.kind !== "block") return [line(row, "row"), line(column, "column")];
    const { block, to } = move;
    return isIn(block, { row, column }) ? [row + to.row - block.top, column + to.column - block.left] : [row, column];
  };
  return linked.replace(/<x:ClientData[\s\S]*?<\/x:ClientData>/g, (data) => {
    const [row, column] = ["Row", "Column"].map((name) => new RegExp(`<x:${name}>\\s*(\\d+)`).exec(data)?.[1]);
    let [down, right] = [0, 0];
    let moved = data;
    if (row !== undefined && column !== undefined) {
      const [toRow, toColumn] = cell(Number(row), Number(column));
      [down, right] = [toRow - Number(row), toColumn - Number(column)];
      moved = moved.replace(/(<x:Row>\s*)\d+/, `$1${toRow}`).replace(/(<x:Column>\s*)\d+/, `$1${toColumn}`);
    }
    return moved.replace(/(<x:Anchor>)([^<]*)/, (all, open: string, text: string) => {
      const numbers = text.split(",").map(Number);
      if (numbers.length !== 8 || numbers.some(Number.isNaN)) return all;
      if (row === undefined) {
        right = line(numbers[0], "column") - numbers[0];
        down = line(numbers[2], "row") - numbers[2];
      }
      for (const i of [0, 4]) numbers[i] = Math.max(0, numbers[i] + right);
      for (const i of [2, 6]) numbers[i] = Math.max(0, numbers[i] + down);
      return open + numbers.join(", ");
    });
  });
}

/** Notes, in threads or not, belong to cells; those of cells that are gone go too. */
export function movedNotes(xml: string, own: string, move: Move, movedRange: (range: string, move: Move) => string): string {
  if (!shifts(own, move)) return xml;
  const changes: Change[] = [];
  scan(xml, {
    close(tag, end) {
      const ref = tag.attribute("ref");
      if (!ref || !/^(?:comment|threadedComment)$/.test(tag.local)) return;
      const moved = movedRange(ref, move);
      if (!moved) changes.push({ start: tag.start, end, text: "" });
      else if (moved !== ref) changes.push(retagged(xml, tag, { ref: moved }));
    },
  });
  return changed(xml, changes);
}

/** Every formula of a part that names its sheets: charts, controls. */
export function movedSources(xml: string, move: Move): string {
  const changes: Change[] = [];
  let text = "";
  scan(xml, {
    open(tag) {
      text = "";
      for (const name of ["fmlaLink", "fmlaRange", "fmlaTxbx", "fmlaGroup", "macro"]) {
        const value = tag.attribute(name);
        if (!value || name === "macro") continue;
        const { formula } = movedFormula(value, "", move);
        if (formula !== value) changes.push(retagged(xml, tag, { [name]: formula }));
      }
    },
    text(more) {
      text += more;
    },
    close(tag, end) {
      if (tag.local !== "f" || tag.closed) return;
      const { formula } = movedFormula(text, "", move);
      if (formula !== text)
        changes.push({ start: tag.open, end: xml.lastIndexOf("</", end - 1), text: formula.replace(/&/g, "&amp;").replace(/</g, "&lt;") });
    },
  });
  return changed(xml, changes);
}

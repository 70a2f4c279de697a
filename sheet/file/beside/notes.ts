import { atOf } from "../../../shared/xlsx/address";
import { declare, declareEnding, put, relate } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { allOf, childOf, escaped, read } from "../../../shared/xlsx/xml";
import { hasPart } from "./losses";
import { bySheet, type FileMade, type FileRead, type SheetMade, type SheetRead } from "./piece";

/** A note on a cell: the page does not show it, and the file keeps it. */
export interface KeptNote {
  readonly key: string;
  readonly author: string;
  readonly text: string;
}

function notesOf({ own, sheet }: SheetRead, { workbook: { parts }, follow }: FileRead): KeptNote[] {
  const path = relationsOf(parts, own.part.path).find(({ kind }) => kind === "comments")?.path;
  if (!path || !parts.has(path)) return [];
  const root = read(textOf(parts, path));
  const authors = allOf(root, "author").map(({ text }) => text);
  return allOf(root, "comment").map((comment, i) => {
    const { ref, authorId } = comment.attributes;
    const words = childOf(comment, "text");
    const text = words ? allOf(words, "t").map((piece) => piece.text) : [];
    const key = `note ${i}`;
    follow(sheet.id, key, ref);
    return { key, author: authors[Number(authorId)] ?? "", text: text.join("") };
  });
}

interface Placed {
  readonly note: KeptNote;
  readonly cell: string;
}

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

function notesXml(placed: readonly Placed[]): string {
  const authors = [...new Set(placed.map(({ note }) => note.author))];
  const comment = ({ note, cell }: Placed) =>
    `<comment ref="${cell}" authorId="${authors.indexOf(note.author)}"><text><r><t xml:space="preserve">${escaped(note.text)}</t></r></text></comment>`;
  return `<comments xmlns="${main}"><authors>${authors.map((author) => `<author>${escaped(author)}</author>`).join("")}</authors><commentList>${placed.map(comment).join("")}</commentList></comments>`;
}

/** The box that a note opens in, to the right of its cell and four rows high. */
function boxXml({ cell }: Placed, id: string): string {
  const { row, column } = atOf(cell);
  const place = [column + 1, 15, row, 2, column + 3, 31, row + 4, 4].join(",");
  return `<v:shape id="${id}" type="#_x0000_t202" style="position:absolute;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"/></v:textbox><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${place}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`;
}

const boxesXml = (placed: readonly Placed[], number: number) =>
  `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="${number}"/></o:shapelayout><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>${placed.map((one, i) => boxXml(one, `_x0000_s${1024 * number + i + 1}`)).join("")}</xml>`;

/** Puts the notes of a sheet into a package; answers the sheet's part with its hint to them. */
function withNotes(xml: string, made: SheetMade, notes: readonly KeptNote[] = [], { parts, sheets }: FileMade): string {
  const { path, here } = made;
  const number = sheets.indexOf(made) + 1;
  const placed = notes.flatMap((note) => (/^[A-Z]+\d+$/.test(here[note.key] ?? "") ? [{ note, cell: here[note.key] }] : []));
  if (!placed.length) return xml;
  put(parts, `xl/comments${number}.xml`, notesXml(placed));
  relate(parts, path, "comments", `../comments${number}.xml`);
  declare(parts, `xl/comments${number}.xml`, "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml");
  put(parts, `xl/drawings/notes${number}.vml`, boxesXml(placed, number));
  declareEnding(parts, "vml", "application/vnd.openxmlformats-officedocument.vmlDrawing");
  const id = relate(parts, path, "vmlDrawing", `../drawings/notes${number}.vml`);
  return xml.replace("</worksheet>", `<legacyDrawing r:id="${id}"/></worksheet>`);
}

export const notes = bySheet<readonly KeptNote[]>({
  name: "notes",
  read: notesOf,
  write: withNotes,
  lost: [["comments in threads (they become notes)", hasPart(/(^|\/)threadedComments?\d*\.xml$/i)]],
});

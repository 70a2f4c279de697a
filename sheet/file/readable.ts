import { relationsOf, textOf, type Workbook } from "../../shared/xlsx/parts";
import { allOf, changed, escaped, read } from "../../shared/xlsx/xml";
import { base64 } from "../../src/excel/base64";
import { sizedFonts } from "./beside/looks";
import { pieces } from "./beside/pieces";
import type { Read } from "./contents/contents";
import { withStandIns } from "./contents/standins";
import { withTypedRules } from "./formulas/inrules";

const pictureTypes: Readonly<Record<string, string>> = { png: "png", jpg: "jpeg", jpeg: "jpeg", gif: "gif", bmp: "bmp", webp: "webp" };

function pictureUrl(path: string, bytes: Uint8Array): string | undefined {
  const type = pictureTypes[path.slice(path.lastIndexOf(".") + 1).toLowerCase()];
  return type && `data:image/${type};base64,${base64(bytes)}`;
}

const own = ["worksheet", "workbook", "styleSheet", "sst", "table"];

/** The engine's reader knows these elements only without a namespace prefix. */
function withoutPrefix(xml: string): string {
  const prefix = /^(?:\uFEFF)?(?:\s*<[?!][^>]*>)*\s*<(\w+):(\w+)[\s>]/.exec(xml);
  return prefix && own.includes(prefix[2]) ? xml.replace(new RegExp(`<(/?)${prefix[1]}:`, "g"), "<$1") : xml;
}

/** Targets beside the part that names them, as the engine's reader expects them. */
function relationsXml({ parts }: Workbook, path: string): string {
  const from = path.replace(/_rels\/([^/]*)\.rels$/, "$1");
  const folder = from.split("/").slice(0, -1);
  const near = (target: string): string => {
    const steps = target.split("/");
    const shared = folder.findIndex((step, i) => step !== steps[i]);
    const common = shared < 0 ? folder.length : shared;
    return [...folder.slice(common).map(() => ".."), ...steps.slice(common)].join("/");
  };
  const targets = new Map(
    relationsOf(parts, from)
      .filter(({ outside }) => !outside)
      .map(({ id, path: target }) => [id, near(target)]),
  );
  return textOf(parts, path).replace(/<Relationship\s[^>]*>/g, (tag) => {
    const target = targets.get(/\sId="([^"]*)"/.exec(tag)?.[1] ?? "");
    return target === undefined ? tag : tag.replace(/\sTarget="[^"]*"/, ` Target="${escaped(target)}"`);
  });
}

/** The workbook's own part, its sheets under the names that they have in the engine: never under a name out of the file. */
function sheetsXml(xml: string, workbook: Workbook, ids: ReadonlyMap<string, string>): string {
  const relations = relationsOf(workbook.parts, workbook.path);
  const idOf = (id: string | undefined) => {
    const path = relations.find((one) => one.id === id)?.path;
    const sheet = workbook.sheets.find((one) => one.path === path);
    return sheet && ids.get(sheet.name);
  };
  const elements = allOf(read(xml), "sheet").filter(({ name }) => !name.includes(":"));
  const changes = elements.map(({ attributes, start, end }) => {
    const id = Object.entries(attributes).find(([name]) => /:id$/.test(name))?.[1];
    const { sheetId = "1", state = "visible" } = attributes;
    const own = idOf(id);
    const text = own ? `<sheet name="${own}" sheetId="${escaped(sheetId)}" state="${escaped(state)}" r:id="${escaped(id!)}"/>` : "";
    return { start, end, text };
  });
  return changed(xml, changes);
}

const types = "application/vnd.openxmlformats-officedocument";

/** Kinds of parts that the engine reads, and their types; of all others it needs nothing. */
const readKinds: Readonly<Record<string, string>> = {
  officeDocument: `${types}.spreadsheetml.sheet.main+xml`,
  worksheet: `${types}.spreadsheetml.worksheet+xml`,
  styles: `${types}.spreadsheetml.styles+xml`,
  theme: `${types}.theme+xml`,
  drawing: `${types}.drawing+xml`,
  chart: `${types}.drawingml.chart+xml`,
  table: `${types}.spreadsheetml.table+xml`,
};

const figures = new Set(["drawing", "chart"]);

/** Parts that others refer to as something that the engine reads, with their types. */
function readable({ parts }: Workbook, withFigures: boolean): Map<string, string> {
  const found = new Map<string, string>();
  for (const path of parts.keys()) {
    if (!path.endsWith(".rels")) continue;
    for (const { kind, path: part } of relationsOf(parts, path.replace(/_rels\/([^/]*)\.rels$/, "$1")))
      if (readKinds[kind] && parts.has(part) && (withFigures || !figures.has(kind))) found.set(part, readKinds[kind]);
  }
  return found;
}

/** The engine goes by a list that names each part; files may give a type to all parts whose names end alike. */
const typesXml = (wanted: ReadonlyMap<string, string>): string =>
  `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${[...wanted]
    .map(([path, type]) => `<Override PartName="/${escaped(path)}" ContentType="${type}"/>`)
    .join("")}</Types>`;

/** A chart series whose reference is #REF! is removed for the engine. */
const withoutLostSeries = (xml: string): string =>
  xml.includes("#REF!")
    ? xml.replace(/<((?:\w+:)?)ser>(?:(?!<\/\1ser>)[\s\S])*<\/\1ser>/g, (all) => (/#REF!\s*</.test(all) ? "" : all))
    : xml;

/** The parts that tell how a workbook looks, as the engine's reader takes them; cells are read by us. */
export function partsFor(
  workbook: Workbook,
  { sheets, names }: Read,
  ids: ReadonlyMap<string, string>,
  withFigures = true,
): Record<string, unknown> {
  const shells = new Map(sheets.map(({ part, shell }) => [part.path, shell]));
  const styles = relationsOf(workbook.parts, workbook.path).find(({ kind }) => kind === "styles")?.path;
  const wanted = readable(workbook, withFigures);
  const parts: Record<string, unknown> = {};
  for (const [path, bytes] of workbook.parts) {
    if (/media\/image/.test(path)) {
      const imageSrc = pictureUrl(path, bytes);
      if (imageSrc) parts[path] = { imageSrc };
    } else if (path.endsWith(".rels")) parts[path] = relationsXml(workbook, path);
    else if (wanted.has(path)) {
      const xml = withoutPrefix(shells.get(path) ?? textOf(workbook.parts, path)).replace(/^\uFEFF/, "");
      if (shells.has(path)) parts[path] = pieces.reduce((text, piece) => piece.readable?.(text, names) ?? text, withTypedRules(xml));
      else if (path === workbook.path) parts[path] = sheetsXml(xml, workbook, ids);
      else if (wanted.get(path) === readKinds.chart) parts[path] = withoutLostSeries(xml);
      else parts[path] = path === styles ? withStandIns(sizedFonts(xml)) : xml;
    }
  }
  parts["[Content_Types].xml"] = typesXml(wanted);
  return parts;
}

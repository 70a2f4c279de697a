import { edit, put } from "../../../shared/xlsx/package";
import { textOf } from "../../../shared/xlsx/parts";
import { type Change, changed, childOf, escaped, openingOf, read } from "../../../shared/xlsx/xml";
import { type Measure, place, spanned } from "./anchor";
import { orderedChart } from "./chartorder";
import { axesOf, isJoined, standsAlone, withCells } from "./drawing";
import { type Drawn, drawingOf, drawnIn } from "./drawn";
import { hasPart, holds } from "./losses";
import {
  type BySheet,
  bySheet,
  type FileMade,
  type FileRead,
  type Piece,
  rekeyed,
  type SheetData,
  type SheetMade,
  type SheetRead,
} from "./piece";

type Figure = SheetData["figures"][number];
type Definition = Record<string, unknown> & { axesDesign?: unknown };

/** A chart as its file draws it: the engine keeps its kind, its cells, its title and its colors. */
export interface KeptChart {
  /** The whole part; undefined where it leans on things that are not kept. */
  readonly xml?: string;
  /** The engine's definition when the chart was read: once that changes, the engine's own chart is saved. */
  readonly was: string;
  readonly name?: string;
  /** What it shows, for those who do not see it. */
  readonly alt?: string;
  /** Whether it moves and grows with its cells. */
  readonly moves?: string;
}

export type KeptCharts = Readonly<Record<string, KeptChart>>;

/** Everything of a definition but the cells, which may have moved, in one order. */
function wordsOf(definition: unknown): string {
  const sorted = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(sorted);
    if (!value || typeof value !== "object") return value;
    const entries = Object.entries(value).filter(([name, one]) => one !== undefined && !/range$/i.test(name) && name !== "chartId");
    return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, one]) => [name, sorted(one)]));
  };
  return JSON.stringify(sorted(definition));
}

const figuresIn = (sheet: SheetData, tag: "chart" | "image"): Figure[] => (sheet.figures ?? []).filter((figure) => figure.tag === tag);

/** Makes the charts that the engine read more like those of the file, and tells what it does not keep of them. */
function chartsOf({ own, sheet }: SheetRead, { workbook: { parts } }: FileRead): KeptCharts {
  const drawing = drawingOf(parts, own.part.path);
  const drawn = drawing && parts.has(drawing) ? drawnIn(parts, drawing) : [];
  const kept: Record<string, KeptChart> = {};
  for (const { anchor, properties, path: part } of drawn) {
    const from = childOf(anchor, "from");
    const at = (name: string) => Number(from && childOf(from, name)?.text);
    const figure = figuresIn(sheet, part ? "chart" : "image").find(
      (one) => one.col === at("col") && one.row === at("row") && !(one.id in kept),
    );
    if (!figure) continue;
    if (!part) {
      Object.assign(figure, spanned(anchor, sheet));
      continue;
    }
    const xml = textOf(parts, part);
    const root = read(xml);
    const definition = figure.data as Definition;
    const axes = axesOf(root);
    if (axes) definition.axesDesign = axes;
    if (isJoined(root)) Object.assign(definition, { type: "line", stacked: false, cumulative: false });
    Object.assign(figure, spanned(anchor, sheet));
    kept[figure.id] = {
      xml: standsAlone(xml, root) ? xml.replace(/<c:(num|str)Cache>.*?<\/c:\1Cache>/gs, "") : undefined,
      was: wordsOf(definition),
      name: properties.attributes.name,
      alt: properties.attributes.descr,
      moves: anchor.attributes.editAs,
    };
  }
  return kept;
}

/** A picture or chart stands where the engine shows it: what the engine writes is wrong for one that starts at a cell's corner. */
function placedAt(xml: string, { anchor }: Drawn, figure: Figure, measure: Measure, moves = anchor.attributes.editAs): Change[] {
  const places = place(figure, measure);
  const [from, to] = ["from", "to"].map((end) => childOf(anchor, end)!);
  return [
    { start: anchor.start, end: openingOf(xml, anchor).end, text: `<${anchor.name}${moves ? ` editAs="${moves}"` : ""}>` },
    { start: from.start, end: from.end, text: `<xdr:from>${places.from}</xdr:from>` },
    { start: to.start, end: to.end, text: `<xdr:to>${places.to}</xdr:to>` },
  ];
}

/** The charts of a sheet as the engine wrote them, each as its file drew it where it still is the same chart. */
function restoreCharts({ parts, model: { getters } }: FileMade, { path, sheet }: SheetMade, kept: KeptCharts): void {
  const drawing = drawingOf(parts, path);
  if (!drawing) return;
  const xml = textOf(parts, drawing);
  const drawn = drawnIn(parts, drawing);
  const [charts, pictures] = [drawn.filter((one) => one.path), drawn.filter((one) => !one.path)];
  const [chartFigures, pictureFigures] = [figuresIn(sheet, "chart"), figuresIn(sheet, "image")];
  if (charts.length !== chartFigures.length || pictures.length !== pictureFigures.length) return;
  const measure = {
    column: (index: number) => (index < sheet.colNumber ? getters.getColSize(sheet.id, index) : 0),
    row: (index: number) => (index < sheet.rowNumber ? getters.getRowSize(sheet.id, index) : 0),
  };
  const changes = pictures.flatMap((one, i) => placedAt(xml, one, pictureFigures[i], measure));
  for (const [i, one] of charts.entries()) {
    const figure = chartFigures[i];
    const own = kept[figure.id];
    const same = own?.was === wordsOf(figure.data);
    edit(parts, one.path!, (engines) => (same && own.xml && withCells(own.xml, engines)) || orderedChart(engines));
    const { id, name } = one.properties.attributes;
    const says = same && own.alt ? ` descr="${escaped(own.alt)}"` : "";
    const properties = {
      start: one.properties.start,
      end: one.properties.end,
      text: `<xdr:cNvPr id="${Number(id) + 1}" name="${escaped(own?.name ?? name)}"${says}/>`,
    };
    changes.push(...placedAt(xml, one, figure, measure, own?.moves), properties);
  }
  put(parts, drawing, changed(xml, changes));
}

export const charts: Piece<BySheet<KeptCharts>> = {
  ...bySheet<KeptCharts>({
    name: "charts",
    read: chartsOf,
    joined:
      ({ figures }) =>
      (kept) =>
        rekeyed(kept, figures),
    lost: [
      ["shapes and text boxes", holds(/drawings\/drawing[^/]*\.xml$/, /<\w+:(sp|cxnSp|grpSp)[\s/>]/)],
      [
        "charts of other kinds than line, bar, pie and scatter",
        holds(/charts\/chart[^/]*\.xml$/, /<c:(area|stock|surface|bubble|radar|doughnut|ofPie)\w*Chart>/),
      ],
      ["charts of the newer kinds", hasPart(/charts\/chartEx/)],
    ],
  }),
  write: (file, kept) => {
    for (const one of file.sheets) restoreCharts(file, one, kept?.[one.sheet.id] ?? {});
  },
};

import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { counted } from "../../shared/host";
import { settled, settledTable } from "./values";

/** Changes to workbook files, part by part: what is not named here stays as it is, byte for byte. */

type Parts = Record<string, Uint8Array>;

const edit = (parts: Parts, name: string, change: (xml: string) => string): void => {
  parts[name] = strToU8(change(strFromU8(parts[name])));
};

const contentTypes = "[Content_Types].xml";

/** Takes parts out, and with them every mention in content types and relationships. */
function drop(parts: Parts, dropped: (name: string) => boolean): void {
  const gone = Object.keys(parts).filter(dropped);
  for (const name of gone) delete parts[name];
  const lost = new Set(gone.map((name) => `/${name}`));
  const mentions = (tag: string, attribute: string, full: (path: string) => string) => (xml: string) =>
    xml.replace(new RegExp(`<${tag}\\b[^>]*\\b${attribute}="([^"]*)"[^>]*/>`, "g"), (whole, path: string) =>
      lost.has(full(path)) ? "" : whole,
    );
  edit(
    parts,
    contentTypes,
    mentions("Override", "PartName", (path) => path),
  );
  for (const name of Object.keys(parts).filter((one) => one.endsWith(".rels"))) {
    const folder = `/${name.replace(/_rels\/[^/]*$/, "")}`;
    edit(
      parts,
      name,
      mentions("Relationship", "Target", (path) => new URL(path, `file://${folder}`).pathname),
    );
  }
}

const isSheet = (name: string) => /^xl\/worksheets\/[^/]+\.xml$/.test(name);

const unzipped = (file: Uint8Array): Parts => ({ ...unzipSync(file) });
const zipped = (parts: Parts): Uint8Array => zipSync(parts as Zippable);

/** A copy without drawings and comments: Excel on the web refuses sheets that hold them. */
export function stripped(file: Uint8Array): Uint8Array {
  const parts = unzipped(file);
  drop(parts, (name) => /^xl\/(drawings|charts|media|comments|threadedComments|persons)\b|^xl\/comments[^/]*\.xml$/.test(name));
  for (const name of Object.keys(parts).filter(isSheet))
    edit(parts, name, (xml) => xml.replace(/<(?:\w+:)?(?:drawing|legacyDrawing|legacyDrawingHF|picture)\b[^>]*\/>/g, ""));
  return zipped(parts);
}

const isTable = (name: string) => /^xl\/tables\/[^/]+\.xml$/.test(name);

/** What a copy with values left, for a person to know. */
function told(cells: number, rules: number): string {
  const values = counted(cells, "PORE cell is its value", "PORE cells are their values");
  return rules ? `${values}; ${counted(rules, "rule or list that calls PORE is", "rules and lists that call PORE are")} left out` : values;
}

export interface Valued {
  readonly file: Uint8Array;
  readonly cells: number;
  readonly rules: number;
  readonly words: string;
}

/**
 * A copy in which cells with PORE formulas are their values. Rules that call PORE cannot be values: they go. So does the order of
 * calculation: Excel makes it anew.
 */
export function withValues(file: Uint8Array): Valued {
  const parts = unzipped(file);
  let cells = 0;
  let rules = 0;
  for (const name of Object.keys(parts).filter(isSheet))
    edit(parts, name, (xml) => {
      const made = settled(xml);
      cells += made.cells;
      rules += made.rules;
      return made.xml;
    });
  for (const name of Object.keys(parts).filter(isTable)) edit(parts, name, settledTable);
  drop(parts, (name) => name === "xl/calcChain.xml");
  return { file: zipped(parts), cells, rules, words: told(cells, rules) };
}

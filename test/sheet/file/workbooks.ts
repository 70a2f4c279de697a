import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packages = "http://schemas.openxmlformats.org/package/2006";
const types = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export interface Made {
  /** Rows of each sheet, as its part holds them; what follows them after a bar. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly names?: string;
  readonly properties?: string;
  readonly strings?: readonly string[];
  /** Other parts by their paths. */
  readonly parts?: Readonly<Record<string, string>>;
  /** More relations of the workbook. */
  readonly relations?: string;
  /** Types of other parts, by their paths. */
  readonly types?: Readonly<Record<string, string>>;
}

/** The parts of a workbook as a careful program writes them, byte order mark and line ends included. */
export function partsOf({
  sheets,
  names = "",
  properties = "",
  strings = [],
  parts = {},
  relations: more = "",
  types: others = {},
}: Made): Record<string, string> {
  const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n';
  const all = Object.entries(sheets);
  const overrides = all.map((_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="${types}.worksheet+xml"/>`);
  return {
    "[Content_Types].xml": `${head}<Types xmlns="${packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${types}.sheet.main+xml"/>${overrides.join("")}<Override PartName="/xl/styles.xml" ContentType="${types}.styles+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="${types}.sharedStrings+xml"/>${Object.entries(
      others,
    )
      .map(([path, type]) => `<Override PartName="/${path}" ContentType="${type}"/>`)
      .join("")}</Types>`,
    "_rels/.rels": `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${head}<workbook xmlns="${main}" xmlns:r="${relations}">${properties}<sheets>${all
      .map(([name], i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="r${i + 1}"/>`)
      .join("")}</sheets>${names ? `<definedNames>${names}</definedNames>` : ""}</workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${packages}/relationships">${all
      .map((_, i) => `<Relationship Id="r${i + 1}" Type="${relations}/worksheet" Target="/xl/worksheets/sheet${i + 1}.xml"/>`)
      .join(
        "",
      )}<Relationship Id="s1" Type="${relations}/styles" Target="styles.xml"/><Relationship Id="s2" Type="${relations}/sharedStrings" Target="sharedStrings.xml"/>${more}</Relationships>`,
    "xl/styles.xml": `<styleSheet xmlns="${main}"><fonts count="1"><font><sz val="11"/><name val="Arial"/></font></fonts><fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="2" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs><dxfs count="1"><dxf><font><b/></font></dxf></dxfs></styleSheet>`,
    "xl/sharedStrings.xml": `<sst xmlns="${main}">${strings.map((text) => `<si><t xml:space="preserve">${text}</t></si>`).join("")}</sst>`,
    ...Object.fromEntries(
      all.map(([, content], i) => {
        const [rows, after = ""] = content.split("|");
        return [
          `xl/worksheets/sheet${i + 1}.xml`,
          `\uFEFF${head}<worksheet xmlns="${main}" xmlns:r="${relations}"><sheetData>${rows}</sheetData>${after}</worksheet>`,
        ];
      }),
    ),
    ...parts,
  };
}

export const zipOf = (parts: Readonly<Record<string, string>>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, strToU8(text)])));

export const workbookOf = (made: Made): Uint8Array => zipOf(partsOf(made));

/** The parts of a file as text; a byte order mark stays. */
export const textsOf = (file: Uint8Array): Record<string, string> =>
  Object.fromEntries(Object.entries(unzipSync(file)).map(([path, bytes]) => [path, strFromU8(bytes, true)]));

/** One cell as a part holds it. */
export const cellIn = (xml: string, address: string): string | undefined =>
  new RegExp(`<c r="${address}"[^>]*?(?:/>|>.*?</c>)`, "s").exec(xml)?.[0];

/** The cell of a single formula on a sheet of its own. */
export const f = (address: string, formula: string, more = "") =>
  `<c r="${address}"><f>${formula.replace(/&/g, "&amp;").replace(/</g, "&lt;")}</f>${more}</c>`;

export const row = (number: number, ...cells: readonly string[]) => `<row r="${number}">${cells.join("")}</row>`;

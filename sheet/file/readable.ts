import { relationsOf, textOf, type Workbook } from "../../shared/xlsx/parts";
import { escaped } from "../../shared/xlsx/xml";
import { asTyped } from "../../src/calls";
import { base64 } from "../../src/excel/package";
import { sizedFonts } from "./beside/looks";
import { readableRules } from "./beside/rules";
import { readableValidations } from "./beside/validations";
import { withStandIns } from "./standins";

const pictureTypes: Readonly<Record<string, string>> = { png: "png", jpg: "jpeg", jpeg: "jpeg", gif: "gif", bmp: "bmp", webp: "webp" };

function pictureUrl(path: string, bytes: Uint8Array): string | undefined {
  const type = pictureTypes[path.slice(path.lastIndexOf(".") + 1).toLowerCase()];
  return type && `data:image/${type};base64,${base64(bytes)}`;
}

const own = ["worksheet", "workbook", "styleSheet", "sst", "table"];

/** The engine's reader knows these elements without a prefix only. */
function withoutPrefix(xml: string): string {
  const prefix = /^(?:\uFEFF)?(?:\s*<[?!][^>]*>)*\s*<(\w+):(\w+)[\s>]/.exec(xml);
  return prefix && own.includes(prefix[2]) ? xml.replace(new RegExp(`<(/?)${prefix[1]}:`, "g"), "<$1") : xml;
}

/** Rules and lists of a sheet may call our functions too. */
const withNames = (xml: string): string =>
  xml.replace(/(<formula[12]?>)([^<]*)(?=<)/g, (_, tag, formula) => tag + asTyped(formula.replace(/_xlfn\.(?:_xlws\.)?/g, "")));

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

/** The parts that tell how a workbook looks, as the engine's reader takes them. */
export function partsFor(workbook: Workbook, names: Readonly<Record<string, string>>): Record<string, unknown> {
  const sheets = new Set(workbook.sheets.map(({ path }) => path));
  const styles = relationsOf(workbook.parts, workbook.path).find(({ kind }) => kind === "styles")?.path;
  const parts: Record<string, unknown> = {};
  for (const [path, bytes] of workbook.parts) {
    if (/media\/image/.test(path)) {
      const imageSrc = pictureUrl(path, bytes);
      if (imageSrc) parts[path] = { imageSrc };
    } else if (path.endsWith(".rels")) parts[path] = relationsXml(workbook, path);
    else if (path.endsWith(".xml") && !path.startsWith("customXml/") && !path.startsWith("docProps/")) {
      const xml = withoutPrefix(textOf(workbook.parts, path)).replace(/^\uFEFF/, "");
      if (sheets.has(path)) parts[path] = readableValidations(readableRules(withNames(xml)), names);
      else parts[path] = path === styles ? withStandIns(sizedFonts(xml)) : xml;
    }
  }
  return parts;
}

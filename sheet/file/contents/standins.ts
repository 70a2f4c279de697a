import { attributeText, escaped } from "../../../shared/xlsx/xml";
import { toEngine, toFile } from "../../lackedformats";

/** Built-in formats, which a file gives by number only. */
const byNumber: Readonly<Record<string, string>> = { "12": "# ?/?", "13": "# ??/??" };

const numbered = Object.entries(byNumber)
  .map(([id, code]) => `<numFmt numFmtId="${id}" formatCode="${code}"/>`)
  .join("");

const respelled = (xml: string, spell: (format: string) => string): string =>
  xml.replace(/(\bformatCode=)("[^"]*"|'[^']*')/g, (_, open, code) => `${open}"${escaped(spell(attributeText(code.slice(1, -1))))}"`);

/** The styles part of a file with stand-ins for the number formats that the engine lacks. */
export const withStandIns = (xml: string): string =>
  respelled(
    /<numFmts[^>]*[^/]>/.test(xml)
      ? xml.replace("</numFmts>", `${numbered}</numFmts>`)
      : xml.replace(/<numFmts[^>]*\/>/, "").replace(/(<styleSheet[^>]*>)/, `$1<numFmts>${numbered}</numFmts>`),
    toEngine,
  );

/** The styles part that the engine wrote, with the original formats in place of the stand-ins. */
export const withoutStandIns = (xml: string): string => respelled(xml, toFile);

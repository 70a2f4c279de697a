import { join } from "node:path";
import { buildSync } from "esbuild";
import type { SVGTemplateResult } from "lit";
import type { Cells } from "../../../shared/columns";
import { catalogue } from "../../../src/catalogue";
import { valuesOf } from "../../../taskpane/given";

export const asked = (name: string, ...typed: (number | string)[]) =>
  valuesOf(
    catalogue.find((contract) => contract.name === name)!,
    typed.map((cell): Cells => [[cell]]),
    0,
  );

/** The drawings as the pane has them: what draws comes as ES modules, so it is bundled first. */
export function drawn<M>(file: string): M {
  const entry = join(__dirname, "../../../taskpane/drawings", file);
  const { outputFiles } = buildSync({ entryPoints: [entry], bundle: true, platform: "node", format: "cjs", write: false });
  const module = { exports: {} };
  new Function("module", "exports", "require", outputFiles[0].text)(module, module.exports, require);
  return module.exports as M;
}

export const markup = (part: unknown): string => {
  if (Array.isArray(part)) return part.map(markup).join("");
  if (typeof part !== "object" || part === null) return String(part);
  const { strings, values } = part as SVGTemplateResult;
  return strings.map((words, i) => words + (i < values.length ? markup(values[i]) : "")).join("");
};

/** The elements of a class in a picture, with their numbers. */
export const marks = (picture: SVGTemplateResult, mark: string): Record<string, number>[] =>
  [...markup(picture).matchAll(new RegExp(`class="?${mark}"?([^>]*)>`, "g"))].map(([, rest]) =>
    Object.fromEntries([...rest.matchAll(/(\w+)="?([\d.-]+)/g)].map(([, name, value]) => [name, Number(value)])),
  );

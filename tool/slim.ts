import { readFileSync } from "node:fs";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** What of a contract is read by help, pane and workbook only: a cell that calculates never asks for it. */
const readElsewhere = new Set(["asks", "format", "equation", "source", "accuracy", "cautions", "worked", "twin", "steps", "trust"]);

/** The text of a module without those parts of its contracts; without the working too, which needs them. */
export function slimmed(text: string): string {
  const file = ts.createSourceFile("module.ts", text, ts.ScriptTarget.Latest, true);
  const cuts: [from: number, to: number][] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === "define") {
      const [contract] = node.arguments;
      if (!contract || !ts.isObjectLiteralExpression(contract)) throw new Error("define takes a contract written out in its place");
      for (const part of contract.properties)
        if (readElsewhere.has(part.name?.getText() ?? ""))
          cuts.push([part.getFullStart(), text[part.end] === "," ? part.end + 1 : part.end]);
    } else ts.forEachChild(node, visit);
  };
  visit(file);
  return cuts.reduceRight((rest, [from, to]) => rest.slice(0, from) + rest.slice(to), text);
}

/** Leaves out of a bundle what its functions never read. */
export const slim: Plugin = {
  name: "slim",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({ contents: slimmed(readFileSync(path, "utf8")), loader: "ts" }));
  },
};

import { readFileSync } from "node:fs";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** Members of contracts and settings that only help, pane and workbook read: cells never need them. */
const readElsewhere = new Set([
  "asks",
  "format",
  "equation",
  "source",
  "accuracy",
  "cautions",
  "worked",
  "twin",
  "steps",
  "trust",
  "beside",
]);
/** What the pane does not read either. */
const readInFiles = new Set(["twin"]);

const without = (text: string, cuts: readonly (readonly [from: number, to: number])[]): string =>
  cuts.reduceRight((rest, [from, to]) => rest.slice(0, from) + rest.slice(to), text);

/** The text of a module without those parts of its contracts; without the working too, which needs them. */
export function slimmed(text: string, parts: ReadonlySet<string> = readElsewhere): string {
  const file = ts.createSourceFile("module.ts", text, ts.ScriptTarget.Latest, true);
  const cuts: [from: number, to: number][] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === "define") {
      const [contract] = node.arguments;
      if (!contract || !ts.isObjectLiteralExpression(contract)) throw new Error("define takes a contract written out in its place");
      for (const part of contract.properties)
        if (parts.has(part.name?.getText() ?? "")) cuts.push([part.getFullStart(), text[part.end] === "," ? part.end + 1 : part.end]);
    } else if (ts.isCallExpression(node) && node.expression.getText() === "setting" && node.arguments.length === 4) {
      const [, , fallback, basis] = node.arguments;
      cuts.push([fallback.end, basis.end]);
    } else ts.forEachChild(node, visit);
  };
  visit(file);
  return without(text, cuts);
}

/** What decimal.js can do beyond arithmetic, which money never asks for: a third of what Excel would load. */
const beyondArithmetic = new Set(
  (
    "cosine cubeRoot hyperbolicCosine hyperbolicSine hyperbolicTangent inverseCosine inverseHyperbolicCosine inverseHyperbolicSine " +
    "inverseHyperbolicTangent inverseSine inverseTangent logarithm naturalExponential naturalLogarithm sine squareRoot tangent toPower " +
    "clampedTo dividedToIntegerBy toExponential toPrecision toSignificantDigits toBinary toFraction toHexadecimal toNearest toOctal " +
    "clamp max min sign acos acosh asin asinh atan atanh atan2 cbrt cos cosh exp hypot ln log log10 log2 pow random sin sinh sqrt sum tan tanh LN10 PI"
  ).split(" "),
);

/** The library without them: methods on its prototype `P`, the like on `Decimal`, and the constants they need. */
export function arithmetic(text: string): string {
  const file = ts.createSourceFile("decimal.mjs", text, ts.ScriptTarget.Latest, true);
  const cuts: [from: number, to: number][] = [];
  const nameOf = (target: ts.Expression): string | undefined => {
    if (ts.isIdentifier(target)) return target.text;
    return ts.isPropertyAccessExpression(target) && /^(P|Decimal)$/.test(target.expression.getText()) ? target.name.text : undefined;
  };
  const visit = (node: ts.Node): void => {
    if (
      ts.isExpressionStatement(node) &&
      ts.isBinaryExpression(node.expression) &&
      node.expression.operatorToken.kind === ts.SyntaxKind.EqualsToken
    ) {
      const name = nameOf(node.expression.left);
      if (name && beyondArithmetic.has(name)) cuts.push([node.getFullStart(), node.end]);
    }
    if (
      ts.isSourceFile(node) ||
      (ts.isFunctionDeclaration(node) && node.name?.text === "clone") ||
      (ts.isBlock(node) && ts.isFunctionDeclaration(node.parent))
    )
      ts.forEachChild(node, visit);
  };
  visit(file);
  if (cuts.length < beyondArithmetic.size / 2) throw new Error("decimal.js is no longer written as its slimming expects");
  return without(text, cuts);
}

/** Leaves out of a bundle what its functions never read. */
const slimming = (parts: ReadonlySet<string>): Plugin => ({
  name: "slim",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({ contents: slimmed(readFileSync(path, "utf8"), parts), loader: "ts" }));
    onLoad({ filter: /decimal\.mjs$/ }, ({ path }) => ({ contents: arithmetic(readFileSync(path, "utf8")), loader: "js" }));
  },
});

export const slimFunctions = slimming(readElsewhere);
export const slimPane = slimming(readInFiles);

import type { AST, Model } from "@odoo/o-spreadsheet";
import { parameters } from "../../../shared/contract";
import { catalogue, cellName } from "../../../src/catalogue";
import type { Reader } from "./known";

/** Functions of the engine that return arrays, beside those of its array category. */
const subjects = new Set(["Array", "Filter"]);
const others = new Set(["SEQUENCE", "RANDARRAY", "XLOOKUP", "OFFSET", "INDIRECT", "SPLIT", "TEXTSPLIT"]);
/** These take several values and give one, in every program, whatever operations stand in them. */
const single = new Set(["SUMPRODUCT", "SUMX2MY2", "SUMX2PY2", "SUMXMY2", "MDETERM"]);
/** These give what they are given. */
const choices = new Set(["IF", "IFS", "IFERROR", "IFNA", "CHOOSE", "SWITCH"]);

const ours = new Map(catalogue.map((contract) => [cellName(contract), contract]));

/**
 * Whether a formula needs to be stored as an array formula: because it may give several values, or because it reckons with
 * several on the way. A plain formula takes one value of each range in other programs.
 */
export function needsArray(formula: string, { parse, iterateAstNodes, registries }: Reader, getters: Model["getters"]): boolean {
  const functions = registries.functionRegistry.content;

  const isMany = (node: AST): boolean => {
    switch (node.type) {
      case "ARRAY":
        return true;
      case "REFERENCE":
        return node.value.includes(":");
      case "SYMBOL": {
        const range = getters.getNamedRange(node.value)?.range;
        return range !== undefined && (range.zone.left !== range.zone.right || range.zone.top !== range.zone.bottom);
      }
      case "UNARY_OPERATION":
        return node.value === "#" || isMany(node.operand);
      case "BIN_OPERATION":
        return isMany(node.left) || isMany(node.right);
      case "FUNCALL":
        return callIsMany(node);
      default:
        return false;
    }
  };

  const callIsMany = ({ value, args }: Extract<AST, { type: "FUNCALL" }>): boolean => {
    const name = value.toUpperCase();
    const contract = ours.get(name);
    if (contract) {
      if (contract.returns.form !== "cell") return true;
      const each = parameters(contract).map(([key, arg]) => key !== "shop" && !arg.take);
      return contract.per === "piece" && args.some((arg, i) => each[i] && isMany(arg));
    }
    if (single.has(name)) return false;
    if (choices.has(name)) return args.some(isMany);
    const known = functions[name];
    if (!known || subjects.has(known.category ?? "") || others.has(name)) return true;
    // Arguments that may be given again come in groups: a range and what it must be, a range and what it must be.
    const again = known.args.findIndex(({ repeating }) => repeating);
    const place = (i: number) => (i < known.args.length || again < 0 ? i : again + ((i - again) % (known.args.length - again)));
    return args.some((arg, i) => !known.args[place(i)]?.acceptMatrix && isMany(arg));
  };

  /** In a function that takes several values anyway a program takes them in operations too, but not in a choice between values. */
  const needsMore = (node: AST): boolean =>
    node.type === "FUNCALL" &&
    isMany(node) &&
    (choices.has(node.value.toUpperCase()) ||
      !functions[node.value.toUpperCase()] ||
      subjects.has(functions[node.value.toUpperCase()].category ?? ""));

  const reckons = (node: AST): boolean => {
    switch (node.type) {
      case "UNARY_OPERATION":
        return isMany(node) || reckons(node.operand);
      case "BIN_OPERATION":
        return isMany(node) || reckons(node.left) || reckons(node.right);
      case "FUNCALL": {
        const name = node.value.toUpperCase();
        if (single.has(name)) return node.args.some((arg) => iterateAstNodes(arg).some(needsMore));
        return (!ours.has(name) && callIsMany(node)) || node.args.some(reckons);
      }
      default:
        return false;
    }
  };

  const tree = parse(formula);
  return isMany(tree) || reckons(tree);
}

import { iterateAstNodes, parse, registries } from "@odoo/o-spreadsheet";

type Node = ReturnType<typeof parse>;

const functions = registries.functionRegistry;

/** What else a formula may refer to. */
export interface Around {
  readonly names: ReadonlySet<string>;
  readonly sheets: ReadonlySet<string>;
}

function unknownIn(node: Node, { names, sheets }: Around): string | undefined {
  if (node.type === "FUNCALL") return functions.contains(node.value.toUpperCase()) ? undefined : `the function ${node.value}`;
  if (node.type === "SYMBOL") return names.has(node.value.toLowerCase()) ? undefined : `the name ${node.value}`;
  if (node.type !== "REFERENCE" || !node.value.includes("!")) return undefined;
  const sheet = node.value.slice(0, node.value.lastIndexOf("!")).replace(/^'|'$/g, "").replace(/''/g, "'");
  return sheets.has(sheet.toLowerCase()) ? undefined : `the reference ${node.value}`;
}

/** What of a formula the engine does not know, in words; undefined where it knows all of it. */
export function unknownOf(formula: string, around: Around): string | undefined {
  try {
    for (const node of iterateAstNodes(parse(formula))) {
      const unknown = unknownIn(node, around);
      if (unknown) return unknown;
    }
    return undefined;
  } catch {
    return "this way of writing a formula";
  }
}

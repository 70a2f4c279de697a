import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import ts from "typescript";

export const root = join(__dirname, "../..");

/** Files under a folder of the project, by their path from its root. */
export function filesUnder(folder: string, ending = ".ts"): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .map((path) => `${folder}/${path.replaceAll("\\", "/")}`)
    .filter((path) => path.endsWith(ending) && statSync(join(root, path)).isFile())
    .sort();
}

export const textOf = (path: string): string => readFileSync(join(root, path), "utf8");

/** What a file imports: files of the project by their path, packages by their name as written. */
export function importsOf(path: string): string[] {
  const { importedFiles } = ts.preProcessFile(textOf(path), true, true);
  return importedFiles.map(({ fileName }) => {
    if (!fileName.startsWith(".")) return fileName;
    const base = join(root, dirname(path), fileName);
    const found = ["", ".ts", "/index.ts", ".js"]
      .map((ending) => base + ending)
      .find((file) => existsSync(file) && statSync(file).isFile());
    if (!found) throw new Error(`${path} imports ${fileName}, which is not there`);
    return relative(root, found).replaceAll("\\", "/");
  });
}

/** Every identifier of a file that stands for something outside it, with what is read from it: `Math.random`, `new Date()`. */
export function outsideNames(path: string): string[] {
  const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  const own = new Set<string>();
  const names: string[] = [];
  const declares = (node: ts.Node): node is ts.Node & { name: ts.Identifier } =>
    "name" in node && isNamed(node.name as ts.Node | undefined);
  const isNamed = (name: ts.Node | undefined): name is ts.Identifier => name !== undefined && ts.isIdentifier(name);
  const visit = (node: ts.Node): void => {
    if (declares(node) && !ts.isPropertyAccessExpression(node)) own.add(node.name.text);
    if (ts.isIdentifier(node) && !isLabel(node)) names.push(nameAt(node));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names.filter((name) => !own.has(name.replace(/^new |[.(].*$/g, "")));
}

/** The name of a property, after a point or before a colon, is nobody outside. */
function isLabel(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    ((ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node) ||
    (ts.isQualifiedName(parent) && parent.right === node)
  );
}

function nameAt(node: ts.Identifier): string {
  const { parent } = node;
  if (ts.isNewExpression(parent) && parent.expression === node) return `new ${node.text}(${parent.arguments?.length ? "…" : ""})`;
  if (ts.isCallExpression(parent) && parent.expression === node) return `${node.text}(${parent.arguments.length ? "…" : ""})`;
  if (ts.isPropertyAccessExpression(parent) && parent.expression === node) return `${node.text}.${parent.name.text}`;
  return node.text;
}

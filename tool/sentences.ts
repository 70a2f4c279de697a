import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

const root = join(__dirname, "..");

/** Where the words that a person can meet stand. */
const code = ["shared", "src", "taskpane", "sheet", "tool"];
const pages = ["taskpane/taskpane.html", "sheet/page/index.html"];
const prose = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "docs"];

export interface Sentence {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

const filesUnder = (path: string, ending: string): string[] =>
  statSync(join(root, path)).isFile()
    ? [path]
    : readdirSync(join(root, path), { recursive: true, encoding: "utf8" })
        .map((file) => `${path}/${file.replaceAll("\\", "/")}`)
        .filter((file) => file.endsWith(ending))
        .sort();

/** Names of elements, styles, files and formulas are no words; a sentence has a letter, and a space or a capital. */
const isSaid = (text: string): boolean =>
  /[a-z]{2}/i.test(text) &&
  (/\s/.test(text.trim()) || /^[A-Z][a-z]+$/.test(text.trim())) &&
  !/^\s*(?:[.#/[]|[a-z]+:\/\/|=|<\?xml|M[\d.]|[a-z-]+\/[a-z])/.test(text);

/** A template with its holes shown as …: the words around them are one sentence. */
function templateText(node: ts.TemplateExpression): string {
  return node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join("");
}

/** Markup without its tags and attributes, but for the attributes that are read aloud or shown. */
const spokenOf = (markup: string): string[] => {
  const attributes = [...markup.matchAll(/(?:aria-label|title|placeholder|alt|content)="([^"]*)"/g)].map(([, words]) => words);
  const words = markup
    .replace(/<(script|style)[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]*>/g, "\n")
    .split("\n");
  return [...attributes, ...words].map((text) => text.replace(/\s+/g, " ").trim()).filter(Boolean);
};

function sentencesOf(file: string): Sentence[] {
  const source = ts.createSourceFile(file, readFileSync(join(root, file), "utf8"), ts.ScriptTarget.Latest, true);
  const found: Sentence[] = [];
  const say = (node: ts.Node, text: string): void => {
    const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
    for (const words of /<\w/.test(text) ? spokenOf(text) : [text]) if (isSaid(words)) found.push({ file, line, text: words });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) say(node, node.text);
    else if (ts.isTemplateExpression(node)) say(node, templateText(node));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

const linesOf = (file: string, words: (text: string) => string[]): Sentence[] =>
  readFileSync(join(root, file), "utf8")
    .split("\n")
    .flatMap((line, i) => words(line).map((text) => ({ file, line: i + 1, text })));

/** Every sentence that a person can meet, in the order of the files. */
export function sentences(): Sentence[] {
  return [
    ...code.flatMap((folder) => filesUnder(folder, ".ts")).flatMap(sentencesOf),
    ...pages.flatMap((page) => linesOf(page, spokenOf)),
    ...linesOf("manifest.xml", (line) => [...line.matchAll(/DefaultValue="([^"]* [^"]*)"/g)].map(([, words]) => words)),
    ...prose.flatMap((path) => filesUnder(path, ".md")).flatMap((file) => linesOf(file, (line) => (line.trim() ? [line.trim()] : []))),
  ];
}

if (require.main === module)
  for (const { file, line, text } of sentences()) console.log(`${file}:${line}\t${text.replace(/\s+/g, " ").trim()}`);

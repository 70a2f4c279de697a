import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { subjects } from "../src/catalogue";
import { cautions, first } from "../src/cautions";
import { signature } from "./help/signature";
import { protocolText } from "./protocol";

const root = join(__dirname, "..");

/** Documents of which parts follow from the code. */
export const documents = ["README.md", "DEVELOPERS.md", "docs/first-excel.md"] as const;

const capital = (word: string) => word[0].toUpperCase() + word.slice(1);

const functions = (): string =>
  Object.entries(subjects)
    .map(([subject, contracts]) =>
      [`| ${capital(subject)} | |`, "|---|---|", ...contracts.map((contract) => `| ${contract.asks} | \`${signature(contract)}\` |`)].join(
        "\n",
      ),
    )
    .join("\n\n");

const read = (path: string): string => readFileSync(join(root, path), "utf8").trim();

/** A file as the change that brings it in. */
const asChange = (path: string, lines: readonly string[]): string =>
  ["```diff", `+++ ${path}`, ...lines.map((line) => `+${line}`), "```"].join("\n");

/** The function that the guide shows. */
const shown = "bakeloss";

const guide: Readonly<Record<string, () => string>> = {
  "the file": () => asChange(`src/resin/${shown}.ts`, read(`src/resin/${shown}.ts`).split("\n")),
  "the index": () =>
    asChange(
      "src/resin/index.ts",
      read("src/resin/index.ts")
        .split("\n")
        .filter((line) => new RegExp(`\\b${shown}\\b`).test(line)),
    ),
  "the words": () =>
    asChange(
      "src/help/asked.ts",
      read("src/help/asked.ts")
        .split("\n")
        .filter((line) => line.trim().startsWith(`${shown.toUpperCase()}:`)),
    ),
  "the test": () => asChange(`test/src/resin/${shown}.test.ts`, read(`test/src/resin/${shown}.test.ts`).split("\n")),
};

const sections: Readonly<Record<string, () => string>> = {
  functions,
  ...guide,
  "first look": protocolText,
  cautions: () => [...Object.values(cautions), first].map((caution) => `- ${caution}`).join("\n"),
};

/** The text with each part between `<!-- name -->` and `<!-- /name -->` written anew from the code. */
export const refreshed = (text: string): string =>
  Object.entries(sections).reduce(
    (all, [name, made]) =>
      all.replace(new RegExp(`(<!-- ${name} -->\n)[^]*?(<!-- /${name} -->)`), (_, from, to) => `${from}\n${made()}\n\n${to}`),
    text,
  );

if (require.main === module)
  for (const name of documents) writeFileSync(join(root, name), refreshed(readFileSync(join(root, name), "utf8")));

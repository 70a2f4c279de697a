import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Contract } from "../shared/contract";
import { outlineOf } from "../shared/given";
import { cellName, subjects } from "../src/catalogue";
import { cautions, first } from "../src/cautions";

const file = join(__dirname, "..", "README.md");

/** `PORE.FILL(chamber, stack, solids, [uptake], [shop])` */
export function signature(contract: Contract): string {
  const own = outlineOf(contract).args.map(([name, arg]) => (arg.optional ? `[${name}]` : name));
  return `${cellName(contract)}(${[...own, ...(contract.shop ? ["[shop]"] : [])].join(", ")})`;
}

const capital = (word: string) => word[0].toUpperCase() + word.slice(1);

const functions = (): string =>
  Object.entries(subjects)
    .map(([subject, contracts]) =>
      [`| ${capital(subject)} | |`, "|---|---|", ...contracts.map((contract) => `| ${contract.asks} | \`${signature(contract)}\` |`)].join(
        "\n",
      ),
    )
    .join("\n\n");

const sections: Readonly<Record<string, () => string>> = {
  functions,
  cautions: () => [...Object.values(cautions), first].map((caution) => `- ${caution}`).join("\n"),
};

/** The text with each part between `<!-- name -->` and `<!-- /name -->` written anew from the catalogue. */
export const refreshed = (text: string): string =>
  Object.entries(sections).reduce(
    (all, [name, made]) =>
      all.replace(new RegExp(`(<!-- ${name} -->\n)[^]*?(<!-- /${name} -->)`), (_, from, to) => `${from}\n${made()}\n\n${to}`),
    text,
  );

if (require.main === module) writeFileSync(file, refreshed(readFileSync(file, "utf8")));

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const modules = join(__dirname, "..", "node_modules");

/** The license text that a package brings along; some only name it. */
function licenceOf(name: string): string {
  const folder = join(modules, name);
  const { version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  return `${name} ${version} (${license})\n\n${file ? readFileSync(join(folder, file), "utf8").trim() : "The package names its licence and brings no text of it."}`;
}

/** What the licenses of others ask to be handed on with their work, for the packages that a build has shipped. */
export const notices = (packages: readonly string[]): string => `${packages.map(licenceOf).join(`\n\n${"-".repeat(72)}\n\n`)}\n`;

import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { capital } from "../shared/capital";
import type { Contract } from "../shared/contract";
import { spaced } from "../shared/working";
import { catalogue, cellName, subjects } from "../src/catalogue";
import { tasks } from "../src/help/tasks";
import { functionPage } from "./help/functionpage";
import { guidePage } from "./help/guidepage";
import { linkTo } from "./help/links";
import { escaped, list, page } from "./help/markup";
import { taskPage } from "./help/taskpage";
import { noting } from "./shipped";
import { slimPane } from "./slim";

/** Pages of help: one for each function and one for each job, from the contracts and the jobs, as files that any browser opens. */

const root = join(__dirname, "..");
const docs = join(root, "docs");
export const helpFolder = "help";

/** Guides that a host, its people and its visitors read, and what they name beside themselves. */
const guides = ["hosting", "support", "privacy", "appsource"].map((name) => ({
  name,
  ...guidePage(readFileSync(join(docs, `${name}.md`), "utf8")),
}));
const snippets = ["nginx.conf", "Caddyfile"];

/** The file of a function's page. */
export const helpFile = ({ name }: Contract): string => `${helpFolder}/${name.toLowerCase()}.html`;

const subjectTitles: Readonly<Record<string, string>> = { also: "Also" };

const indexPage = (): string =>
  page(
    "Help",
    `<h1>Porewise help</h1>
<p><label for="search">What do you want to know?</label> <input id="search" type="search" autocomplete="off"></p>
<div id="found"></div>
<div id="all">
<h2>Jobs</h2>
${list([...tasks.map(({ id, title }) => `<a href="${id}.html">${escaped(title)}</a>`), '<a href="first-excel.html">Ten steps for a first look in Excel</a>'])}
${Object.entries(subjects)
  .map(
    ([subject, contracts]) =>
      `<h2>${subjectTitles[subject] ?? capital(spaced(subject))}</h2>${list(contracts.map((contract) => `${linkTo(contract)} <code>${cellName(contract)}</code>`))}`,
  )
  .join("\n")}
<h2>For those who hand it on</h2>
${list(guides.map(({ name, title }) => `<a href="${name}.html">${escaped(title)}</a>`))}
</div>`,
  );

const style = `main{max-width:46rem;margin:0 auto;padding:1rem 1rem 3rem}
main ul{list-style:disc;padding-left:1.25rem}main ol{padding-left:1.5rem}main li{margin:.375rem 0}
a{color:var(--resin)}h1{margin:.5rem 0;font-size:1.625rem}.lead{font-size:1.125rem}
.care{margin:1rem 0;padding:.25rem 1rem .75rem;border-left:4px solid var(--care);background:var(--care-pale);color:var(--care)}.care h2{margin:.5rem 0}
#example{padding:0 1rem 1rem;border:1px solid var(--line);border-radius:8px;background:var(--card)}
#search{width:100%;max-width:30rem;padding:.5rem;font:inherit;border:1px solid var(--edge);border-radius:6px;background:var(--card);color:var(--ink)}
pre{overflow-x:auto}code{overflow-wrap:anywhere}pre code{overflow-wrap:normal}
.drawing{max-width:30rem}table{width:100%}td:not(:first-child){min-width:6rem}
@media print{.back,#search,label[for=search],#found{display:none}a{color:inherit}main{max-width:none;padding:0}h2{break-after:avoid}li,tr,figure{break-inside:avoid}}
`;

/** Every page by its file's name. */
export function helpPages(): Map<string, string> {
  return new Map([
    ["index.html", indexPage()],
    ...tasks.map((task): [string, string] => [`${task.id}.html`, taskPage(task)]),
    ...catalogue.map((contract): [string, string] => [`${contract.name.toLowerCase()}.html`, functionPage(contract)]),
    ...guides.map(({ name, html }): [string, string] => [`${name}.html`, html]),
  ]);
}

export async function buildHelp(outDir: string): Promise<void> {
  const folder = join(outDir, helpFolder);
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of helpPages()) writeFileSync(join(folder, name), text);
  for (const name of snippets) cpSync(join(docs, name), join(folder, name));
  writeFileSync(join(folder, "help.css"), style);
  await build({
    entryPoints: { help: join(root, "taskpane/help/live.ts") },
    outdir: folder,
    bundle: true,
    minify: true,
    // Pages opened from a disk cannot load modules.
    format: "iife",
    target: "es2022",
    charset: "utf8",
    legalComments: "none",
    plugins: [slimPane, noting],
  });
}

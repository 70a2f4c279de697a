import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import type { Arg } from "../shared/argument";
import { type Contract, parameters, shopArg } from "../shared/contract";
import type { Entries } from "../shared/form";
import { outlineOf } from "../shared/given";
import { rangeWords, resultWords, unitWords } from "../shared/stub";
import { namedEquation, spaced } from "../shared/working";
import { catalogue, cellName, subjects } from "../src/catalogue";
import { cautionsOf } from "../src/cautions";
import { type Task, tasks } from "../src/help/tasks";
import { linesOf, tableOf } from "../taskpane/answer";
import { type Asked, ask, shopName } from "../taskpane/asking";
import { signature } from "./readme";
import { noting } from "./shipped";
import { slimPane } from "./slim";

/** Pages of help: one for each function and one for each job, from the contracts and the jobs, as files that any browser opens. */

const root = join(__dirname, "..");
export const helpFolder = "help";

/** The file of a function's page. */
export const helpFile = ({ name }: Contract): string => `${helpFolder}/${name.toLowerCase()}.html`;

const escaped = (text: string): string => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
const marked = (text: string): string => escaped(text).replace(/`([^`]+)`/g, "<code>$1</code>");
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** A value of a worked example as a person types it into a field: a line a row. */
const typedText = (value: unknown): string =>
  Array.isArray(value) ? value.map((row) => (Array.isArray(row) ? row.join(", ") : String(row))).join("\n") : String(value ?? "");

/** The worked example of a contract as a form holds it. */
export function exampleOf(contract: Contract) {
  const names = Object.keys(contract.args);
  const { typed } = contract.worked;
  const texts = Object.fromEntries(
    names.flatMap((name, i) => (typed[i] === undefined || typed[i] === "" ? [] : [[name, typedText(typed[i])]])),
  );
  const shop = typed[names.length] as (string | number)[][] | undefined;
  return { name: contract.name, typed: texts, ...(shop ? { shop } : {}) };
}

/** The example as it is answered. */
export function answered(contract: Contract): Asked {
  const { typed, shop } = exampleOf(contract);
  const entries: Entries = Object.fromEntries(Object.entries(typed).map(([name, text]) => [name, { typed: text }]));
  return ask(contract, entries, shop ? shopName : "US", shop);
}

function answerWords(contract: Contract): string {
  const { answer, shop, many } = answered(contract);
  if (!answer) return "";
  if (many || contract.returns.form === "table" || contract.returns.form === "spread") {
    const { head, rows } = tableOf(contract, answer, shop.units);
    const cells = (row: readonly string[], as: string) => `<tr>${row.map((text) => `<${as}>${escaped(text)}</${as}>`).join("")}</tr>`;
    return `<div class="scroll"><table>${cells(head, "th")}${rows.map((row) => cells(row, "td")).join("")}</table></div>`;
  }
  return `<ul>${linesOf(contract, answer[0], shop.units)
    .map(({ label, value }) => `<li>${escaped(label)}: <strong>${escaped(value)}</strong></li>`)
    .join("")}</ul>`;
}

/** A limit past this only keeps slips out: nobody needs to read it. */
const isEndless = (words: string) => / to \d{6,}/.test(words);
const limits = (arg: Arg): string => {
  const words = rangeWords(arg);
  return isEndless(words) ? words.replace(/ to \d+/, "").replace(/$/, " or more") : words;
};

const whenLeftOut = (arg: Arg): string =>
  !arg.optional
    ? "must be given"
    : "basis" in arg
      ? "the setting on My Shop"
      : arg.otherwise !== undefined
        ? String(arg.otherwise)
        : "optional";

const argumentRow = ([name, arg]: readonly [string, Arg]): string =>
  `<tr><th scope="row"><code>${name}</code></th><td>${escaped(arg.label)}</td><td>${escaped(arg.kind ? unitWords(arg.kind) : "")}</td><td>${escaped(
    arg.choices?.join(", ") || limits(arg),
  )}</td><td>${escaped(whenLeftOut(arg))}</td></tr>`;

const list = (items: readonly string[]): string => `<ul>${items.map((item) => `<li>${item}</li>`).join("")}</ul>`;
const linkTo = (contract: Contract): string => `<a href="${contract.name.toLowerCase()}.html">${escaped(contract.asks)}</a>`;
const named = (names: readonly string[]): Contract[] => names.flatMap((name) => catalogue.find((own) => own.name === name) ?? []);

const page = (title: string, body: string): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>${escaped(title)} - Porewise</title>
    <link rel="stylesheet" href="../taskpane.css">
    <link rel="stylesheet" href="help.css">
    <script defer src="help.js"></script>
  </head>
  <body>
    <main>
${body}
    </main>
  </body>
</html>
`;

const back = '<p class="back"><a href="index.html">All questions</a></p>';

function functionPage(contract: Contract): string {
  const args = parameters(contract).filter(([, arg]) => arg !== shopArg);
  const settings = outlineOf(contract).settings.map(
    ([, { name, label, basis }]) => `<strong>${escaped(name)}</strong>: ${escaped(label)} (${escaped(basis)})`,
  );
  const warnings = cautionsOf(contract.cautions);
  const subject = Object.values(subjects).find((contracts) => contracts.includes(contract))!;
  const jobs = tasks.filter(({ functions }) => functions.includes(contract.name));
  const { formula } = answered(contract);
  return page(
    contract.asks,
    `${back}
<h1>${escaped(contract.asks)}</h1>
<p><code>${escaped(signature(contract))}</code></p>
${warnings.length ? `<section class="care"><h2>Cautions</h2>${list(warnings.map(escaped))}</section>` : ""}
<h2>Try it</h2>
<div id="example" data-example="${escaped(JSON.stringify(exampleOf(contract)))}">
<p><code>${escaped(formula)}</code> gives</p>
${answerWords(contract)}
</div>
${
  args.length
    ? `<h2>What you give it</h2>
<div class="scroll"><table>
<tr><th scope="col">Name</th><th scope="col">What it is</th><th scope="col">Plain numbers are</th><th scope="col">Range</th><th scope="col">If left out</th></tr>
${args.map(argumentRow).join("\n")}
</table></div>
<p>Text with its own unit works too: 3/4 in, 19 mm, 95 °C, 12 %.${contract.per === "piece" ? " Give a column instead of a cell and you get a column of answers." : ""}</p>`
    : ""
}
<h2>What it gives</h2>
<p>${escaped(capital(resultWords(contract.returns)))}.</p>
<h2>Equation</h2>
<p class="equation">${escaped(namedEquation(contract))}</p>
<h2>Source</h2>
<p>${escaped(contract.source)}</p>
<h2>Accuracy</h2>
<p>${escaped(capital(contract.accuracy))}.</p>
${settings.length ? `<h2>Settings from My Shop that it uses</h2>${list(settings)}` : ""}
<h2>See also</h2>
${list([...jobs.map(({ id, title }) => `<a href="${id}.html">${escaped(title)}</a>`), ...subject.filter((own) => own !== contract).map(linkTo)])}`,
  );
}

function taskPage({ title, answer, steps, functions, cautions }: Task): string {
  const warnings = cautionsOf(cautions);
  const step = ({ words, formula, gives }: Task["steps"][number]): string =>
    `${marked(words)}${formula ? `<br><code>${escaped(formula)}</code>${gives ? `<br>${escaped(capital(gives))}` : ""}` : ""}`;
  return page(
    title,
    `${back}
<h1>${escaped(title)}</h1>
<p class="lead">${escaped(answer)}</p>
${warnings.length ? `<section class="care"><h2>Cautions</h2>${list(warnings.map(escaped))}</section>` : ""}
<ol>${steps.map((one) => `<li>${step(one)}</li>`).join("")}</ol>
<h2>The functions for it</h2>
${list(named(functions).map((contract) => `${linkTo(contract)} <code>${cellName(contract)}</code>`))}`,
  );
}

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
</div>`,
  );

const style = `main{max-width:46rem;margin:0 auto;padding:1rem 1rem 3rem}
main ul{list-style:disc;padding-left:1.25rem}main ol{padding-left:1.5rem}main li{margin:.375rem 0}
a{color:var(--resin)}h1{margin:.5rem 0;font-size:1.625rem}.lead{font-size:1.125rem}
.care{margin:1rem 0;padding:.25rem 1rem .75rem;border-left:4px solid var(--care);background:var(--care-pale);color:var(--care)}.care h2{margin:.5rem 0}
#example{padding:0 1rem 1rem;border:1px solid var(--line);border-radius:8px;background:var(--card)}
#search{width:100%;max-width:30rem;padding:.5rem;font:inherit;border:1px solid var(--edge);border-radius:6px;background:var(--card);color:var(--ink)}
.drawing{max-width:30rem}table{width:100%}td:not(:first-child){min-width:6rem}
@media print{.back,#search,label[for=search],#found{display:none}a{color:inherit}main{max-width:none;padding:0}h2{break-after:avoid}li,tr,figure{break-inside:avoid}}
`;

/** Every page by its file's name. */
export function helpPages(): Map<string, string> {
  return new Map([
    ["index.html", indexPage()],
    ...tasks.map((task): [string, string] => [`${task.id}.html`, taskPage(task)]),
    ...catalogue.map((contract): [string, string] => [`${contract.name.toLowerCase()}.html`, functionPage(contract)]),
  ]);
}

export async function buildHelp(outDir: string): Promise<void> {
  const folder = join(outDir, helpFolder);
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of helpPages()) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, "help.css"), style);
  await build({
    entryPoints: { help: join(root, "taskpane/help/live.ts") },
    outdir: folder,
    bundle: true,
    minify: true,
    // A page on a disk takes no modules.
    format: "iife",
    target: "es2022",
    charset: "utf8",
    legalComments: "none",
    plugins: [slimPane, noting],
  });
}

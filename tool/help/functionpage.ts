import type { Arg } from "../../shared/argument";
import { capital } from "../../shared/capital";
import { type Contract, parameters, shopArg } from "../../shared/contract";
import { outlineOf } from "../../shared/given";
import { rangeWords, resultWords, unitWords } from "../../shared/stub";
import { namedEquation } from "../../shared/working";
import { subjects } from "../../src/catalogue";
import { cautionsOf } from "../../src/cautions";
import { tasks } from "../../src/help/tasks";
import { answered, answerWords, exampleOf } from "./example";
import { linkTo } from "./links";
import { back, escaped, list, page, scrolled } from "./markup";
import { signature } from "./signature";

/** Above this a limit only catches mistakes and is not shown. */
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

export function functionPage(contract: Contract): string {
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
${scrolled(
  "What you give it",
  `<table>
<tr><th scope="col">Name</th><th scope="col">What it is</th><th scope="col">Plain numbers are</th><th scope="col">Range</th><th scope="col">If left out</th></tr>
${args.map(argumentRow).join("\n")}
</table>`,
)}
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

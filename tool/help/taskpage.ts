import { capital } from "../../shared/capital";
import { cellName } from "../../src/catalogue";
import { cautionsOf } from "../../src/cautions";
import type { Task } from "../../src/help/tasks";
import { linkTo, named } from "./links";
import { back, escaped, list, marked, page } from "./markup";

export function taskPage({ title, answer, steps, functions, cautions }: Task): string {
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

import { html, nothing, type TemplateResult } from "lit";
import type { Contract } from "../../shared/contract";
import { isFault } from "../../shared/outcome";
import { explain } from "../../src/catalogue";
import { cautionsOf } from "../../src/cautions";
import { isScreen, type Line, linesOf, tableOf } from "../answer";
import type { Asked } from "../asking";

const shownRows = 8;

const line = ({ label, value, also, fault }: Line): TemplateResult => html`<div class="answer-line">
  <dt>${label}</dt>
  <dd class=${fault ? "fault" : "value"}>${value}${also.length ? html`<span class="also">${also.join(", ")}</span>` : nothing}</dd>
</div>`;

/** A row with the same text in all cells but the first shows it once. */
function cellsIn(row: readonly string[]): TemplateResult[] {
  const [label, ...others] = row;
  if (others.length < 2 || others.some((words) => words !== others[0])) return row.map((words) => html`<td>${words}</td>`);
  return [html`<td>${label}</td>`, html`<td class="fault" colspan=${others.length}>${others[0]}</td>`];
}

function table(contract: Contract, asked: Asked): TemplateResult {
  const { head, rows } = tableOf(contract, asked.answer!, asked.shop.units);
  const faults = asked.answer!.filter((row) => row.some(isFault)).length;
  const count = rows.length === 1 ? "1 row" : `${rows.length} rows`;
  return html`<p>${count}${faults ? `, ${faults} of them with an error` : ""}</p>
    <div class="scroll" tabindex="0" role="region" aria-label="The first rows of the answer"><table>
      <thead><tr><th scope="col">Row</th>${head.map((words) => html`<th scope="col">${words}</th>`)}</tr></thead>
      <tbody>${rows.slice(0, shownRows).map((row, i) => html`<tr><th scope="row">${i + 1}</th>${cellsIn(row)}</tr>`)}</tbody>
    </table></div>
    ${rows.length > shownRows ? html`<p class="hint">The sheet will show all ${rows.length}.</p>` : nothing}`;
}

const isTable = ({ returns }: Contract) => returns.form === "table" || returns.form === "spread";

type Told = ReturnType<typeof explain>;

/** How a single answer came about; of many, each row has its own. */
export function toldOf(contract: Contract, cells: Parameters<typeof explain>[1], asked: Asked): Told {
  return asked.answer && !asked.many && !asked.blank && !isTable(contract) ? explain(contract, cells) : undefined;
}

/** The likely range of an answer, in words. */
const guessed = (contract: Contract, told: Told, lines: readonly Line[]): readonly Line[] =>
  contract.trust && told && !isFault(told) ? lines.map((own, i) => (own.fault ? own : { ...own, value: told.answer[i][1] })) : lines;

/** The answer as it stands while somebody types. */
export function answerOf(contract: Contract, asked: Asked, told: Told): TemplateResult {
  const { answer, missing, troubles, trouble, shop } = asked;
  if (trouble) return html`<p class="fault">${trouble}</p>`;
  if (Object.keys(troubles).length) return html`<p class="quiet">No answer yet: see the message under the field.</p>`;
  if (!answer) return html`<p class="quiet">Still to fill in: ${missing.map((label) => label.split(":")[0].toLowerCase()).join("; ")}.</p>`;
  if (asked.blank) return html`<p class="quiet">The cells it uses are blank, so the answer is blank too.</p>`;
  if (asked.many || isTable(contract)) return table(contract, asked);
  return html`<dl>${guessed(contract, told, linesOf(contract, answer[0], shop.units)).map(line)}</dl>${besideOf(told)}`;
}

/** What must be said beside the answer. */
export const besideOf = (told: Told): TemplateResult =>
  html`${told && !isFault(told) ? told.beside.map((words) => html`<p class="beside">${words}</p>`) : nothing}`;

/** Where a number comes from, how far to trust it, and what to beware of. */
export function backing(contract: Contract): TemplateResult {
  const warnings = cautionsOf(contract.cautions);
  return html`${isScreen(contract) ? html`<p class="first">This can only rule a lid out. It is no approval.</p>` : nothing}
    <h3>Source</h3>
    <p>${contract.source}</p>
    <h3>Accuracy</h3>
    <p>${contract.accuracy}</p>
    ${warnings.length ? html`<h3>Cautions</h3><ul class="cautions">${warnings.map((words) => html`<li>${words}</li>`)}</ul>` : nothing}`;
}

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { lineToSend, steps } from "../src/help/firstexcel";
import { back, escaped, marked, page } from "./help/markup";

/** The steps of a first look in a real Excel, for people who read it here and for those who tick it in a browser. */
export const protocolText = (): string =>
  [
    ...steps.map(({ act, see }, i) => `${i + 1}. ${act}\n   - [ ] You see: ${see}`),
    "",
    "Then send this one line back, with y or n for each step, and at its end what you saw instead where it is n:",
    "",
    "```",
    lineToSend,
    "```",
  ].join("\n");

const style = `.step{display:flex;gap:.5rem;align-items:flex-start;margin:.25rem 0 1rem;font-weight:400;cursor:pointer}
.step input[type=checkbox]{flex:none;width:1.25rem;height:1.25rem;margin:.125rem 0 0;padding:0}code{user-select:all}#line{font-weight:400}`;

const script = `const boxes = [...document.querySelectorAll("[data-step]")];
const line = document.getElementById("line");
const version = line.dataset.version;
const write = () => {
  const told = (id) => document.getElementById(id).value.trim() || "____";
  line.value = version + " | Excel: " + told("excel") + " | " + boxes.map((box, i) => (i + 1) + ": " + (box.checked ? "y" : "n")).join(" ") + " | Self-check: " + told("check") + " | Seen instead: " + told("instead");
};
addEventListener("input", write);
write();
`;

const name = "first-excel";

const body = (): string => `${back}
<h1>First look in Excel</h1>
<p>Ten steps, about ten minutes. Check a step if you see what it says. At the end, send the line at the bottom back.</p>
<ol>
${steps.map(({ act, see }) => `<li>${marked(act)}<label class="step"><input type="checkbox" data-step><span>I see: ${marked(see)}</span></label></li>`).join("\n")}
</ol>
<p><label>Which Excel, on what? (File, Account) <input type="text" id="excel"></label></p>
<p><label>The line at the top of Self-check <input type="text" id="check"></label></p>
<p><label>What you saw instead, at a step that you did not check <input type="text" id="instead"></label></p>
<p><label>Send this back <textarea id="line" rows="4" readonly data-version="${escaped(lineToSend.split(" | ")[0])}"></textarea></label></p>`;

export function buildProtocol(outDir: string): void {
  const folder = join(outDir, "help");
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.html`), page("First look in Excel", body(), name));
  writeFileSync(join(folder, `${name}.css`), style);
  writeFileSync(join(folder, `${name}.js`), script);
}

import type { Contract } from "../../../shared/contract";
import { formulaOf } from "../../../shared/formula";
import { catalogue, cellName } from "../../catalogue";
import { version, versionText } from "../../version";
import { aroundAsk, ask, askedAs, type Formula, formula } from "../formula";
import { Page } from "../page";
import { type Ref, refTo, whole } from "../place";

/** Which cell of a worked example is compared, and its expected value. */
function expected({ name, returns, worked: { gives } }: Contract): { value: string | number | boolean; row: number; column: number } {
  const rows: unknown[][] = Array.isArray(gives) ? (Array.isArray(gives[0]) ? gives : [gives]) : [[gives]];
  const isWords = name === "SUITABILITY";
  const row = rows.findIndex((line) => line.some((value) => typeof value === "number"));
  const at = isWords || returns.form === "cell" || row < 0 ? [0, 0] : [row, rows[row].findLastIndex((value) => typeof value === "number")];
  return { value: rows[at[0]][at[1]] as string, row: at[0], column: at[1] };
}

/** A whole answer is asked for one of its cells. */
const askedFor = (contract: Contract, row: number, column: number): Formula => {
  const asked = askedAs(contract, contract.worked.typed);
  return aroundAsk(contract.returns.form === "cell" ? asked : { ...asked, at: [row + 1, column + 1] });
};

const agrees = (gives: Ref, due: Ref): Formula =>
  formula`IF(ISERROR(${gives}),"no answer",IF(AND(ISNUMBER(${gives}),ISNUMBER(${due})),IF(ABS(${gives}-${due})<=0.000001*ABS(${due}),"agrees","differs"),IF(${gives}=${due},"agrees","differs")))`;

export interface SelfCheck {
  readonly page: Page;
  readonly line: Ref;
}

/** Every function with its worked example: the first look in any program shows whether all is well. */
export function selfCheckSheet(): SelfCheck {
  const page = new Page(
    "Self-check",
    "Every function with a worked example. If all agree, this program calculates correctly; if not, send us the line below.",
    [20, 48, 15, 15, 9, 3, 14],
    { columns: 5 },
  );
  page.open("Self-check");
  const line = refTo(page.sheet.name, page.row, 0);
  page.row += 1;
  page.say("Without the add-in the fixed answers are only copies: they check nothing.");
  page.skip();
  page.heading("function", "as typed", "gives", "due", "");
  page.sheet.print = { ...page.sheet.print, titleRow: page.row - 1 };
  const top = page.row;
  const column = (index: number) => refTo(page.sheet.name, top, index, catalogue.length);
  const [gives, due, verdicts, notes] = [2, 3, 4, 6].map(column);
  catalogue.forEach((contract, row) => {
    const { value, row: down, column: right } = expected(contract);
    const format = typeof value === "number" ? "General" : undefined;
    const look = format ? "result" : "words";
    page.put(top + row, 0, { value: cellName(contract), look: "label" });
    const cell = contract.returns.form === "cell" ? "" : `, row ${down + 1}, column ${right + 1}`;
    page.put(top + row, 1, { value: `${formulaOf(cellName(contract), contract.worked.typed).slice(1)}${cell}`, look: "note" });
    page.put(top + row, 2, { formula: askedFor(contract, down, right), format, look });
    page.put(top + row, 3, { value, format, look });
    page.put(top + row, 4, { formula: agrees(gives, due), row, look: "words" });
    const before = refTo(page.sheet.name, top + row - 1, notes.column);
    const own = formula`IF(${verdicts}="agrees",""," ${contract.name}")`;
    page.put(top + row, notes.column, { formula: row ? formula`${before}&${own}` : own, row, look: "note" });
  });
  page.row = line.row;
  const said = ask(version, {}, formula`"${versionText}"`);
  const last = refTo(page.sheet.name, top + catalogue.length - 1, notes.column);
  const count = formula`COUNTIF(${whole(verdicts)},"agrees")`;
  page.say(formula`"Porewise "&${said}&": "&${count}&" of ${catalogue.length} agree"&IF(LEN(${last})=0,"",". Not:"&${last})`, "strong");
  page.alert("bad", verdicts, formula`${verdicts}<>"agrees"`);
  page.alert("good", verdicts, formula`${verdicts}="agrees"`);
  page.sheet.frozen = { rows: top, columns: 1 };
  return { page, line };
}

import { type Formula, formula } from "./formula";
import { leadRow } from "./page";
import { type Ref, refTo } from "./place";
import { needsAddIn } from "./shown";

/** What My Shop says first: which value there is wrong or missing, and what to type. Every other sheet repeats that and no more. */
const shopSays = refTo("My Shop", leadRow, 0);
export const shopIsWrong = formula`LEFT(${shopSays},1)="“"`;
export const shopWarning = [shopIsWrong, formula`${shopSays}`] as const;

/** A reason, but for what only follows from a wrong value on My Shop. */
export const ownReason = (reason: Formula): Formula => formula`IF(${shopIsWrong},"",${reason})`;

/** True where a cell shows no number that it should show: an error with the functions, its words without them. */
export const failed = (cell: Ref): Formula =>
  formula`IF(ISERROR(${cell}),TRUE,IF(ISNUMBER(${cell}),FALSE,AND(LEN(${cell})>0,${cell}<>"${needsAddIn}")))`;

/** Said of a fixed value of the plain edition that no longer applies: nothing failed there. */
export const goneWords = "only the workbook with the add-in works this out again";

/** The words to show beside a cell that may fail. */
export const verdict = (cell: Ref, good: string, bad: string, gone = goneWords): Formula => {
  const reason = formula`IF(ISERROR(${cell}),"${bad}",IF(${cell}="${needsAddIn}","${gone}",IF(LEN(${cell})>0,"${bad}","")))`;
  return formula`IF(ISNUMBER(${cell}),"${good}",${ownReason(reason)})`;
};

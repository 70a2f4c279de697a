import { catalogue } from "../catalogue";
import { versionText } from "../version";

/** What a person with a real Excel does and must see: no Excel runs in the tests. Ten steps, ten minutes. */
export interface Step {
  readonly act: string;
  readonly see: string;
}

const askOf = (name: string): string => catalogue.find((contract) => contract.name === name)!.asks;

export const steps: readonly Step[] = [
  {
    act: "Put the add-in into Excel (`npm run excel` from a clone, or as “On a host of your own” in the help says), and open a new workbook.",
    see: "On the Home tab a button Porewise. It opens a side pane with the tabs Run, Safety, Workbook, Functions and Working.",
  },
  { act: "Type `=PORE.VERSION()` in A1.", see: `${versionText}, within a second. Not #NAME?, #BUSY! or #REF!.` },
  {
    act: "Type `=PORE.FILL(6,5,104)` in A2.",
    see: "1.136727 or, by the width of the column, fewer digits of it. While you type, PORE.FILL is offered with its question.",
  },
  {
    act: 'Type `=PORE.FILL(6,"five",104)` in A3, and rest the pointer on the triangle or the warning sign of the cell.',
    see: "#VALUE!, and a message that begins with “height of the stack of pieces” and says what to type.",
  },
  {
    act: "Type 104, 90, 80 in C1:C3 and 93, 93, 70 in D1:D3, then `=PORE.MOISTURE(C1:C3,D1:D3)` in E1.",
    see: "0.118…, #VALUE! and 0.142… in E1, E2 and E3 by themselves. An Excel from before 2021 fills E1 only: say so.",
  },
  {
    act: `In the pane: Functions, “${askOf("FILL")}”, chamber 6, stack 5, solids 104. Select A5, then Insert formula.`,
    see: "1.14 qt in the pane while you type, and the same number in A5. Ctrl+Z takes it out again.",
  },
  {
    act: "Select A2, then in the pane: Working.",
    see: "The equation of PORE.FILL, once in words and once with your numbers, and its source.",
  },
  {
    act: "In the pane: Workbook, US units, filled, Insert into this workbook. Then open the sheet Self-check.",
    see: `The sheets of the workbook at the end, none with #NAME?. The line at the top of Self-check: Porewise ${versionText}: ${catalogue.length} of ${catalogue.length} agree.`,
  },
  {
    act: "In the pane: Safety, check the first line. Save the workbook, close Excel, start it again and open the workbook.",
    see: "The check mark is still there. The numbers are still there, none is #NAME?.",
  },
  {
    act: "On the sheet Blanks type a weight in the first row that is 1 higher.",
    see: "Its moisture goes up and its resin goes down at once, and no other row changes.",
  },
];

/** The line to send back, with a place for each step. */
export const lineToSend = `Porewise ${versionText} | Excel: ____ (File, Account) on ____ | ${steps.map((_, i) => `${i + 1}: _`).join(" ")} | Self-check: ____ | Seen instead: ____`;

import type { Browser } from "playwright-core";
import type { Cells } from "../../shared/columns";
import { formulaOf } from "../../shared/formula";
import type { Cell, Outcome } from "../../shared/outcome";
import { isFault } from "../../shared/outcome";
import { evaluator } from "../../sheet/engine";
import { call, catalogue, namespace } from "../../src/catalogue";
import { launch } from "../../tool/browser";
import type { Metadata } from "../../tool/metadata";
import { built } from "../built";
import { needing } from "../needing";
import { type Answer, type Asked, openFunctions } from "./office";

const block = (typed: unknown): Cells | undefined => {
  if (typed === undefined) return undefined;
  if (!Array.isArray(typed)) return [[typed as Cell]];
  return Array.isArray(typed[0]) ? (typed as Cell[][]) : typed.map((cell) => [cell as Cell]);
};
const asked = (id: string, ...typed: unknown[]): Asked => ({ id, cells: typed.map(block) });
const ours = ({ id, cells }: Asked): Outcome[][] => call(catalogue.find(({ name }) => name === id)!, cells);

/** Browser and Node may compute a tangent or a power one last digit apart. */
const digits = (value: number) => Math.min(100, 12 - Math.ceil(Math.log10(Math.abs(value) || 1)));
const alike = (answer: Outcome[][]) =>
  answer.map((line) => line.map((cell) => (typeof cell === "number" ? expect.closeTo(cell, digits(cell)) : cell)));

const evaluate = evaluator();

const divided = { error: "#DIV/0!", message: "" } as const;
const lost = { error: "#REF!", message: "" } as const;

/** One call of every function, and what a sheet may hand in besides. All go in together: a second batch waits half a second. */
const calls: Readonly<Record<string, Asked>> = {
  ...Object.fromEntries(catalogue.map(({ name, worked }) => [`${name} as worked`, asked(name, ...worked.typed)])),
  "a column with a bad row": asked("MOISTURE", [104, 90, 100], [93, 93, 93]),
  "a row of pieces": asked("MOISTURE", [[104, 100]], [[93, 93]]),
  "an argument left out": asked("FILL", 6, 5, 104, undefined, "US"),
  "an argument left out in between": asked("UPTAKE", 104, 0.45, undefined, 0.12),
  "the shop's table": asked("FILL", 6, 5, 104, undefined, [
    ["units", "SI"],
    ["cover", 25],
  ]),
  "an unknown setting": asked("FILL", 6, 5, 104, undefined, [["covr", 25]]),
  "an error handed in": asked("FILL", 6, divided, 104),
  "an error in one row": asked("MOISTURE", [104, divided, 100], [93, 93, 93]),
  "blanks as null": asked("MOISTURE", [104, null, null], [93, null, 93]),
  "blanks as empty text": asked("MOISTURE", [104, "", ""], [93, "", 93]),
  "blanks as 0": asked("MOISTURE", [104, 0, 0], [93, 0, 93]),
  "nothing filled in": asked("FILL", null, null, null),
  "an argument that is no number": asked("FILL", 6, "five", 104),
  "no answer": asked("UPTAKE", 104, 0.45, undefined, 0.5),
  "words with a unit": asked("FILL", "150 mm", '5"', "1.7 L"),
  "TRUE for a number": asked("FILL", 6, true, 104),
};

needing("browser")("the functions under the vendor's library", () => {
  let browser: Browser;
  const script = built("functions.js");
  const made = JSON.parse(built("functions.json").toString()) as Metadata;
  let answers: Record<string, Answer>;
  let ask: (calls: readonly Asked[]) => Promise<Answer[]>;

  beforeAll(async () => {
    browser = await launch();
    ask = await openFunctions(browser, script, made);
    const given = await ask(Object.values(calls));
    answers = Object.fromEntries(Object.keys(calls).map((name, i) => [name, given[i]]));
  });
  afterAll(() => browser?.close());

  it.each(Object.keys(calls))("%s", (name) => expect(answers[name]).toEqual(alike(ours(calls[name]))));

  const typable = Object.entries(calls).filter(
    ([, { cells }]) => !cells.some((own) => own?.flat().some((cell) => cell === null || isFault(cell))),
  );
  it.each(typable.map(([name]) => name))("%s, as calc has it", (name) => {
    const { id, cells } = calls[name];
    const { value } = evaluate(formulaOf(`${namespace}.${id}`, cells));
    expect(answers[name]).toEqual(alike(Array.isArray(value) ? value : [[value]]));
  });

  it("gives a row that is at fault an error with its words, and the others their numbers", () =>
    expect(answers["a column with a bad row"]).toEqual([
      [expect.closeTo(11 / 93, 12)],
      [{ error: "#VALUE!", message: "weight is lighter than when dry: weigh again" }],
      [expect.closeTo(7 / 93, 12)],
    ]));

  it("tells an error that Excel lets no function give by its name", async () => {
    const [answer] = await ask([asked("MOISTURE", [104, lost], [93, 93])]);
    expect(answer).toEqual([[expect.closeTo(11 / 93, 12)], [{ error: "#VALUE!", message: "a cell given shows #REF!" }]]);
  });

  it("would see a function missing from functions.json, an argument missing, and a function missing from the bundle", async () => {
    const more = { ...made, functions: [...made.functions, { ...made.functions[0], id: "NOSUCH" }] };
    const askMore = await openFunctions(browser, script, more);
    expect((await askMore([asked("NONE"), asked("MOISTURE", 104), asked("NOSUCH", 104, 93)])).map(String)).toEqual([
      "Error: functions.json has no NONE",
      "Error: MOISTURE: dryWeight may not be left out",
      expect.stringContaining("Error: the call failed with code 2"),
    ]);
  });
});

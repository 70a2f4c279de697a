import { evaluator } from "../../sheet/engine";
import { documents, refreshed } from "../../tool/readme";
import { within } from "../within";
import { textOf } from "./sources";

const readme = textOf("README.md");
const examples = [...readme.matchAll(/^(=PORE\..+?)\s+→ (\S+)$/gm)].map(([, formula, result]) => ({ formula, result }));

describe("the README", () => {
  it.each(documents)("and its like say what the code says: npm run readme writes %s", (name) =>
    expect(refreshed(textOf(name))).toBe(textOf(name)),
  );

  it("shows formulas with results", () => expect(examples.length).toBeGreaterThan(0));

  it.each(examples)("$formula gives $result", ({ formula, result }) => {
    const places = result.split(".")[1]?.length ?? 0;
    within(evaluator()(formula).value, Number(result), 0.5 * 10 ** -places);
  });

  it("names only commands that exist", () => {
    const { scripts } = JSON.parse(textOf("package.json"));
    const named = [
      ...readme.matchAll(/npm (?:run )?(?:-s )?(start|test|calc|build|bench|package|recalc|workbook|excel|release|dev)\b/g),
    ].map(([, name]) => name);
    expect(named.length).toBeGreaterThan(2);
    expect([...new Set(named)].filter((name) => !scripts[name])).toEqual([]);
  });
});

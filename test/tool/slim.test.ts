import { readFileSync } from "node:fs";
import { arithmetic, slimmed } from "../../tool/slim";

describe("a module without what only help and pane read", () => {
  it("keeps what a cell's calculation needs, and its comments and brackets", () => {
    const whole = [
      'import { define } from "./contract";',
      "/** What it is. */",
      "export const fill = define({",
      '  name: "FILL",',
      '  asks: "How much, {really}?",',
      '  worked: { typed: [6, "a,b"], gives: 1 },',
      "  args: { chamber },",
      "  steps: ({ chamber }) => ({ area: said(chamber) }),",
      "  run: ({ chamber }) => as(chamber),",
      '  twin: "{chamber}"',
      "});",
    ].join("\n");
    const left = [
      'import { define } from "./contract";',
      "/** What it is. */",
      "export const fill = define({",
      '  name: "FILL",',
      "  args: { chamber },",
      "  run: ({ chamber }) => as(chamber),",
      "});",
    ];
    expect(slimmed(whole)).toBe(left.join("\n"));
  });
  it("leaves every other text alone", () => {
    const text = 'export const cautions = { asks: "x", source: "y" };\n';
    expect(slimmed(text)).toBe(text);
  });
  it("fails where it could not tell what a contract holds", () =>
    expect(() => slimmed("export const fill = define(contract);")).toThrow("define takes a contract written out in its place"));
  it("leaves the basis of a setting to help and pane", () =>
    expect(slimmed('export const gap = setting("gap", quantity("length", "x", 1), 1 / 16, "from memory");')).toBe(
      'export const gap = setting("gap", quantity("length", "x", 1), 1 / 16);',
    ));
});

describe("decimal.js without what lies beyond arithmetic", () => {
  it("still adds, multiplies, divides and rounds as the whole does", () => {
    const slim = arithmetic(readFileSync(require.resolve("decimal.js").replace(/decimal\.js$/, "decimal.mjs"), "utf8"));
    const library = new Function(`${slim.replace(/^export default Decimal;/m, "").replace(/^export /gm, "")}; return Decimal;`)();
    const whole = require("decimal.js");
    for (const [a, b] of [
      ["1.005", "3"],
      ["-7.25", "0.04"],
      ["1e20", "1e-7"],
    ])
      for (const act of ["plus", "minus", "times", "div"]) expect(new library(a)[act](b).toFixed(9)).toBe(new whole(a)[act](b).toFixed(9));
    expect(new library(1).sine).toBeUndefined();
  });
  it("says so when the library is no longer written that way", () =>
    expect(() => arithmetic("export default class Decimal {}")).toThrow("no longer written"));
});

import { slimmed } from "../../tool/slim";

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
});

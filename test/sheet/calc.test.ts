import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { catalogue, cellName } from "../../src/catalogue";
import { command } from "../command";
import { near } from "../within";

const run = command("sheet/calc.ts");

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "calc-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

function answers(formulas: readonly string[]): any[] {
  const file = join(folder, "formulas");
  writeFileSync(file, formulas.join("\r\n"));
  const { stdout, status, stderr } = run("--file", file);
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  return stdout
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
}

describe("calc of a file", () => {
  it("answers one JSON object a formula and skips blank lines", () => {
    const [fill, bare, column, wrong] = answers([
      "=PORE.FILL(6,5,104)",
      "",
      "PORE.DYE(2)",
      "  ",
      "=PORE.MOISTURE({104;90},{93;93})",
      "=PORE.DYE()",
    ]);
    expect(fill).toEqual({ formula: "=PORE.FILL(6,5,104)", value: expect.closeTo(1.1367273, 7) });
    expect(bare).toEqual({ formula: "PORE.DYE(2)", value: 0.5 });
    expect(column.value).toEqual([[expect.closeTo(0.11828, 5)], [{ error: "#VALUE!", message: expect.stringContaining("weigh again") }]]);
    expect(wrong).toEqual({ formula: "=PORE.DYE()", error: "#VALUE!", message: expect.stringContaining("number of arguments") });
  });

  it("gives what every contract promises, 300 formulas at once", () => {
    const literal = (typed: unknown): string => {
      if (Array.isArray(typed)) return `{${typed.map((row) => (Array.isArray(row) ? row : [row]).map(literal).join(",")).join(";")}}`;
      if (typed === undefined || typed === null) return "";
      return typeof typed === "string" ? `"${typed.replace(/"/g, '""')}"` : String(typed).toUpperCase();
    };
    const worked = catalogue.filter(({ worked }) => typeof worked.gives === "number");
    const formulas = worked.map((contract) => `=${cellName(contract)}(${contract.worked.typed.map(literal).join(",")})`);
    const many = Array.from({ length: 300 }, (_, i) => formulas[i % formulas.length]);
    const given = answers(many);
    expect(given).toHaveLength(300);
    worked.forEach((contract, i) => {
      if (typeof given[i].value !== "number") throw new Error(JSON.stringify(given[i]));
      near(given[i].value, contract.worked.gives as number, 1e-6);
    });
  });
});

describe("calc of one formula", () => {
  it("answers in words, with the unit, the source and the cautions", () => {
    const { stdout, status } = run("=PORE.FILL(6,5,104)");
    expect(status).toBe(0);
    expect(stdout).toContain("resin to pour: 1.14 qt");
    expect(stdout).toContain("28.27 in² × (5 in + 1 in) − 104 in³");
    expect(stdout).toContain("! Resin and catalyst: wear gloves");
  });

  it("answers a column row by row, errors in words", () => {
    const { stdout } = run("=PORE.MOISTURE({104;90},{93;93})");
    expect(stdout).toMatch(/1 {3}11\.8 %\n2 {3}#VALUE! weight is lighter than when dry: weigh again/);
  });

  it("answers a formula of built-in functions", () => expect(run("=SUM(1,2)").stdout).toBe("3\n"));
});

describe("wrong use", () => {
  it.each([
    { args: ["--file", "no such file"], words: "no file no such file can be read" },
    { args: [], words: "npm run calc" },
    { args: ["--nonsense"], words: "nonsense" },
  ])("$args fails and says why", ({ args, words }) => {
    const { status, stderr } = run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});

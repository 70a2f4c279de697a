import type { Arg } from "../../shared/argument";
import { type Contract, parameters } from "../../shared/contract";
import { outlineOf, readGiven } from "../../shared/given";
import type { Cell, Outcome } from "../../shared/outcome";
import type { Result } from "../../shared/result";
import { functionWords } from "../../shared/stub";
import { twinsOf } from "../../shared/twin";
import { namesIn } from "../../shared/working";
import { call, catalogue, cellName, readShop, subjects } from "../../src/catalogue";
import { cautions, cautionsOf, first } from "../../src/cautions";
import { settings } from "../../src/shop";
import { versionText } from "../../src/version";
import { nameTroubles } from "../../tool/metadata";
import { cells, type Typed } from "../ask";
import { near } from "../within";
import { textOf } from "./sources";

const typedCells = (contract: Contract) => contract.worked.typed.map((typed) => cells(typed as Typed));

/** What a cell of a worked example holds, whether it is written as one value, a row or rows. */
const rowsOf = (gives: unknown): readonly (readonly unknown[])[] =>
  Array.isArray(gives) ? (Array.isArray(gives[0]) ? gives : [gives]) : [[gives]];

function expectSame(actual: Outcome, expected: unknown): void {
  if (typeof expected === "number") near(actual, expected, 1e-6);
  else expect(actual).toEqual(expected);
}

describe("names", () => {
  it("are unique and fit for a spreadsheet", () => expect(nameTroubles(catalogue.map(({ name }) => name))).toEqual([]));

  it("of settings are unique, however they are typed", () => {
    const folded = settings.map(({ name }) => name.toLowerCase().replace(/[^a-z0-9]/g, ""));
    expect(new Set(folded).size).toBe(folded.length);
  });

  it("of subjects hold functions", () => expect(Object.values(subjects).every((contracts) => contracts.length > 0)).toBe(true));
});

describe("questions", () => {
  it("are asked once each", () => expect(new Set(catalogue.map(({ asks }) => asks)).size).toBe(catalogue.length));
});

describe.each(catalogue.map((contract) => ({ name: cellName(contract), contract })))("$name", ({ contract }) => {
  const outline = outlineOf(contract);
  const returns: Result = contract.returns;
  const names = [...outline.args, ...outline.settings].map(([name]) => name);

  it("asks a short question in words", () => {
    expect(contract.asks).toMatch(/^[A-Z].{5,58}\?$/);
    expect(functionWords(contract).startsWith(`${contract.asks} Gives: `)).toBe(true);
  });

  it("says its source and how far to trust it", () => {
    expect(contract.source.length).toBeGreaterThan(5);
    expect(contract.accuracy.length).toBeGreaterThan(4);
  });

  it("names cautions that exist", () => {
    expect(contract.cautions.filter((key) => !(key in cautions))).toEqual([]);
    expect(cautionsOf(contract.cautions).at(-1)).toBe(contract.cautions.length ? first : undefined);
  });

  it("names its arguments in words, what must be given before what may", () => {
    const optional = outline.args.map(([, arg]) => arg.optional === true);
    expect(optional).toEqual([...optional].sort());
    const labels = parameters(contract).map(([, { label }]) => label);
    expect(labels.filter((label) => label.trim().length < 3)).toEqual([]);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it("has an equation and a twin of its own arguments, settings and steps", () => {
    const { given } = readGiven(outline, typedCells(contract), readShop(undefined));
    const steps = Object.keys(contract.steps?.(given) ?? {});
    expect(contract.equation.length).toBeGreaterThan(3);
    expect(namesIn(contract.equation).filter((name) => !names.includes(name) && !steps.includes(name))).toEqual([]);
    const twins = twinsOf(contract).map((twin) => twin?.text ?? "");
    expect(twins.flatMap(namesIn).filter((name) => !names.includes(name))).toEqual([]);
    expect(contract.twin === undefined).toBe(twins.every((twin) => twin === ""));
  });

  it("has a number format for every cell it fills", () => {
    if (returns.form === "cell" || returns.form === "spread") expect(contract.format).toMatch(/\S/);
    else expect(Object.keys(contract.format)).toEqual(Object.keys(returns.of));
  });

  it("gives what its worked example says", () => {
    const answers = call(contract, typedCells(contract));
    const expected = rowsOf(contract.worked.gives);
    expect(answers.map((row) => row.length)).toEqual(expected.map((row) => row.length));
    answers.forEach((row, r) => {
      row.forEach((actual, c) => {
        expectSame(actual, expected[r][c]);
      });
    });
  });

  it("takes its arguments' own examples", () => {
    const samples = outline.args.map(([, arg]: readonly [string, Arg]) => cells(arg.example as Typed) as readonly (readonly Cell[])[]);
    expect(() => readGiven(outline, samples, readShop(undefined))).not.toThrow();
  });
});

describe("the version", () => {
  it("is the same in package.json, manifest.xml and src/version.ts", () => {
    expect(JSON.parse(textOf("package.json")).version).toBe(versionText);
    expect(/<Version>(.*?)<\/Version>/.exec(textOf("manifest.xml"))?.[1]).toBe(`${versionText}.0`);
    expect(textOf("CHANGELOG.md")).toContain(`## [${versionText}]`);
  });
});

import fc from "fast-check";
import { type Contract, parameters } from "../../shared/contract";
import type { Cell, Fault } from "../../shared/outcome";
import { call, catalogue, cellName } from "../../src/catalogue";
import { settings } from "../../src/shop";
import { cells, type Typed } from "../ask";
import { type Cells, divided, hostile, isHanded, troubleWith } from "../hostile";

const columnOf = (...values: Cell[]): Cells => values.map((value) => [value]);

const hostileBlocks: Readonly<Record<string, Cells>> = {
  ...Object.fromEntries(Object.entries(hostile).map(([name, cell]) => [name, [[cell]]])),
  "a column of three": columnOf(1, 2, 3),
  "a column of bad cells": columnOf(...Object.values(hostile)),
  "a row of bad cells": [Object.values(hostile)],
  "a block of blanks": [
    ["", ""],
    ["", ""],
  ],
};

const badShops: Readonly<Record<string, Cells>> = {
  "an unknown setting": [["covver", 1]],
  "a value out of range": [["oven", 5000]],
  "a value of the wrong kind": [["oven", "5 g"]],
  "a word": [["metric"]],
  "three columns": [["oven", 200, "F"]],
  "a value without a name": [
    ["oven", 200],
    ["", 3],
  ],
  "an error": [["oven", divided]],
  "a name that is an error": [[divided, 1]],
};

/** Calls a function and names everything that is wrong with what comes back. */
function troubles(contract: Contract, all: readonly (Cells | undefined)[]): string[] {
  const answers = call(contract, all);
  const width = answers[0]?.length ?? 0;
  if (!answers.length || answers.some((row) => row.length !== width || !width)) return ["a block that is no rectangle"];
  return answers.flat().flatMap((answer) => troubleWith(answer, isHanded(all)) ?? []);
}

const workedCells = (contract: Contract): (Cells | undefined)[] => contract.worked.typed.map((typed) => cells(typed as Typed));

/** The worked example with one argument replaced. */
function replaced(contract: Contract, at: number, by: Cells): (Cells | undefined)[] {
  const all = workedCells(contract);
  while (all.length < at) all.push(undefined);
  all[at] = by;
  return all;
}

const withArguments = catalogue.filter((contract) => parameters(contract).length);
const rowsOf = (contracts: readonly Contract[]) => contracts.map((contract) => ({ name: cellName(contract), contract }));

describe.each(rowsOf(withArguments))("$name", ({ contract }) => {
  const own = Object.keys(contract.args);
  const perPiece = contract.per === "piece";

  it.each(own.map((name, at) => ({ name, at })))("answers whatever stands in $name", ({ at }) => {
    const wrong = Object.entries(hostileBlocks).flatMap(([what, block]) =>
      troubles(contract, replaced(contract, at, block)).map((trouble) => `${what}: ${trouble}`),
    );
    expect(wrong).toEqual([]);
  });

  it("hands an error on", () => {
    own.forEach((name, at) => {
      // A piece that cannot be used is counted there, in the last line.
      if (contract.name === "SHOPPINGLIST" && name === "pieces") return;
      const [first, ...rest] = workedCells(contract)[at] ?? [[]];
      const answers = call(contract, replaced(contract, at, [[divided, ...first.slice(1)], ...rest])).flat();
      expect(JSON.stringify(answers)).toContain(divided.error);
    });
  });

  if (contract.shop)
    it.each(Object.keys(badShops))("tells of a shop that holds %s", (what) => {
      const all = replaced(contract, own.length, badShops[what]);
      expect(troubles(contract, all)).toEqual([]);
      expect(call(contract, all).flat()).toEqual([expect.objectContaining({ error: expect.any(String) })]);
    });

  it("answers random mixtures", () => {
    const any = fc.oneof(
      fc.constantFrom(...Object.values(hostile)),
      fc.double(),
      fc.integer({ min: -5, max: 50_000 }),
      fc.string({ maxLength: 12 }),
      fc.constantFrom("3/4 in", "95 C", "12 %", "1 qt", "2026-03-14", "maple", "US", "SI"),
    );
    const block = fc
      .integer({ min: 1, max: 5 })
      .chain((width) => fc.array(fc.array(any, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }));
    const count = parameters(contract).length;
    const all = fc.array(fc.option(block, { nil: undefined }), { minLength: 0, maxLength: count });
    const kept = workedCells(contract);
    // Half of the mixtures keep the worked example where nothing was drawn, or hardly any would get past the first argument.
    fc.assert(
      fc.property(all, fc.boolean(), (drawn, mend) => {
        const mixed = mend ? Array.from({ length: Math.max(drawn.length, kept.length) }, (_, i) => drawn[i] ?? kept[i]) : drawn;
        expect(troubles(contract, mixed)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  if (perPiece && contract.worked.typed.length > 1)
    it("wants columns of one height", () => {
      const required = workedCells(contract).map((block) => columnOf(block?.[0][0], block?.[0][0]));
      required[0] = columnOf(...[0, 1, 2].map(() => required[0][0][0]));
      expect(call(contract, required)).toEqual([
        [expect.objectContaining({ error: "#VALUE!", message: expect.stringContaining("same height") })],
      ]);
    });

  if (perPiece)
    it("keeps one bad row in its row", () => {
      const worked = workedCells(contract);
      const good = call(contract, worked)[0];
      own.slice(0, worked.length).forEach((_, at) => {
        for (const [what, bad] of Object.entries(hostile)) {
          const columns = worked.map((block, i) => {
            const cell = block?.[0][0];
            return columnOf(cell, i === at ? bad : cell, cell);
          });
          const answers = call(contract, columns);
          expect({ what, at, first: answers[0], last: answers[2] }).toEqual({ what, at, first: good, last: good });
        }
      });
    });
});

describe("arguments of any shape", () => {
  const odd: Readonly<Record<string, unknown>> = {
    "no lines": [],
    "a line of nothing": [[]],
    "lines of nothing": [[], []],
    "lines of several lengths": [[1], [1, 2, 3], []],
    "a line missing": [[1], null, [2]],
    "one value": 3,
    "a text": "3/4 in",
    "one line": [1, 2],
    "cells left out": [[undefined, 1]],
  };

  it.each(rowsOf(catalogue))("$name answers them", ({ contract }) => {
    const count = parameters(contract).length;
    for (const [what, block] of Object.entries(odd)) {
      for (let at = 0; at <= count; at++)
        expect({ what, at, wrong: troubles(contract, replaced(contract, at, block as Cells)) }).toEqual({ what, at, wrong: [] });
      for (const many of [0, 1, count, count + 1, 300])
        expect({ what, many, wrong: troubles(contract, Array(many).fill(block)) }).toEqual({ what, many, wrong: [] });
    }
  });
});

it("reads a chamber's text in one pass", () => {
  const fill = catalogue.find(({ name }) => name === "FILL")!;
  // Two passes, one in the other, would take hours.
  for (const part of [" ", "x ", "8 x", "by", "1/", "a"])
    for (const around of ["8", "8 x 5"]) expect(troubles(fill, replaced(fill, 0, [[`${around}${part.repeat(200_000)}\n8`]]))).toEqual([]);
});

describe("the shop's settings", () => {
  const readers = catalogue.filter((contract) => contract.shop);

  it.each(settings.map(({ name }) => name))("%s takes no nonsense", (name) => {
    const contract = readers[0];
    for (const [what, cell] of Object.entries(hostile)) {
      const wrong = troubles(contract, replaced(contract, Object.keys(contract.args).length, [[name, cell]]));
      expect({ what, wrong }).toEqual({ what, wrong: [] });
    }
  });

  it("suggests the nearest name", () => {
    const [answer] = call(readers[0], replaced(readers[0], Object.keys(readers[0].args).length, [["covver", 1]])).flat();
    expect((answer as Fault).message).toContain("“cover”");
  });
});

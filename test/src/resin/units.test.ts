import * as fc from "fast-check";
import { plainUnits } from "../../../shared/unit";
import type { Kind } from "../../../shared/unittable";
import { spill } from "../../ask";
import { near } from "../../within";

const us = plainUnits("US");
const si = plainUnits("SI");
const inSI = (kind: Kind, n: number) => ((n + us[kind].shift) * us[kind].factor) / si[kind].factor - si[kind].shift;

type Part = readonly [kind: Kind, least: number, most: number];

/** Arguments by kind and plain US range, how many more stand before the shop, and the kinds of the answer's cells. */
type Case = readonly [name: string, args: readonly Part[], more: number, answers: readonly Kind[]];
const weight = (least: number, most: number): Part => ["weight", least, most];
const fluid = (least: number, most: number): Part => ["fluid", least, most];

// biome-ignore format: a function a line
const cases: readonly Case[] = [
  ["UPTAKE", [["volume", 1, 500], ["gravity", 0.1, 0.9], ["share", 0.1, 1], ["share", 0, 0.25]], 0, ["fluid"]],
  ["FULLNESS", [weight(10, 20), weight(20, 40), ["volume", 100, 500], ["gravity", 0.1, 0.5], ["share", 0, 0.2]], 0, ["share"]],
  ["DYE", [fluid(0, 50)], 1, ["powder"]],
  ["DYETOPUP", [fluid(0, 9), ["strength", 0, 0.25], fluid(1, 9)], 1, ["powder"]],
  ["MIX", [fluid(0, 50), fluid(0, 9)], 0, ["fluid", "count", "fluid"]],
];

describe("US and SI", () => {
  it.each(cases)("%s agrees with itself to 1e-9", (name, args, more, answers) =>
    fc.assert(
      fc.property(fc.tuple(...args.map(([, min, max]) => fc.double({ min, max, noNaN: true }))), (numbers) => {
        const between = new Array(more).fill(undefined);
        const [own] = spill(name, ...numbers, ...between, "US") as number[][];
        const [metric] = spill(name, ...numbers.map((n, i) => inSI(args[i][0], n)), ...between, "SI") as number[][];
        answers.forEach((kind, i) => {
          near(metric[i] + 1, inSI(kind, own[i]) + 1, 1e-9);
        });
      }),
    ),
  );
});

import { isFault } from "../../shared/outcome";
import { twinFormula } from "../../shared/twin";
import { plainUnits } from "../../shared/unit";
import { mix } from "../../src/resin/mix";
import { spoons } from "../../src/resin/spoons";
import { lidLoad } from "../../src/vacuum/lidload";
import { ask, spill } from "../ask";
import { needing } from "../needing";
import { many, tries, twins } from "../tries";
import { near } from "../within";
import { calculated } from "./libreoffice";

needing("spreadsheet")("plain twins, computed by LibreOffice", () => {
  const all = tries();
  const volumes = [0, 0.02, 0.0624, 0.0625, 0.125, 0.5, 0.9374, 0.9375, 1, 5.9375, 17.875];
  const mixes = [
    [2, 3],
    [2, 2],
    [0, 0],
    [3, 0],
    [0.3, 0.1],
    [3.0000001, 0],
  ];
  const columns = [1, 2, 3];
  const usualLid = { diameter: "6", thickness: "0.75", material: '"cast acrylic"', lidLimit: "0.5" };
  const badLids = {
    "words for a size": { diameter: '""' },
    "a blank size": { diameter: "Z1" },
    "no thickness": { thickness: "0" },
    "a thickness out of range": { thickness: "30" },
    glass: { material: '"glass"' },
    "a limit out of range": { lidLimit: "50" },
  };
  // All in one file: it takes the other program longer to start than to calculate them.
  const asked = {
    tries: all.map(({ formula }) => formula),
    spoons: volumes.map((dye) => twinFormula(spoons, { dye: String(dye) }, plainUnits("US"))!),
    mixes: mixes.flatMap(([need, onHand]) =>
      columns.map((column) => twinFormula(mix, { need: `${need}`, onHand: `${onHand}`, packetMakes: "1" }, plainUnits("US"), column)!),
    ),
    lids: Object.values({ usual: usualLid, ...badLids }).map((given) => twinFormula(lidLoad, { ...usualLid, ...given }, plainUnits("US"))!),
  };
  const made = {} as Record<keyof typeof asked, ReturnType<typeof calculated>>;
  beforeAll(() => {
    const answers = calculated(Object.values(asked).flat());
    for (const [name, { length }] of Object.entries(asked)) made[name as keyof typeof asked] = answers.splice(0, length);
  });

  it.each(twins.map(({ contract: { name }, column }) => ({ name, column })))(
    "$name, column $column, agrees on its worked example and a dozen random inputs, US and SI",
    ({ name, column }) => {
      const mine = all.map((one, i) => ({ ...one, theirs: made.tries[i] })).filter((one) => one.name === name && one.column === column);
      expect(mine.length).toBeGreaterThan(many);
      expect(mine.filter(({ ours }) => !isFault(ours)).length).toBeGreaterThan(many / 3);
      for (const { ours, theirs: other, formula } of mine) {
        if (typeof ours !== "number") {
          expect({ formula, gives: other }).toEqual({ formula, gives: isFault(ours) ? expect.stringMatching(/^(#|Err)/) : ours });
          continue;
        }
        if (typeof other !== "number") throw new Error(`${formula} gives ${other}`);
        near(other, ours, 1e-9);
      }
    },
  );

  it("SPOONS' twin finds every spoon", () => {
    expect(made.spoons).toEqual(volumes.map((dye) => ask("SPOONS", dye)));
    expect(new Set(made.spoons).size).toBe(8);
  });

  it("MIX's twin mixes nothing where enough is on hand, and no packet too many", () => {
    const ours = mixes.flatMap(([need, onHand]) => spill("MIX", need, onHand)[0]);
    made.mixes.forEach((value, i) => {
      expect(value).toBeCloseTo(ours[i] as number, 9);
    });
  });

  it("LIDLOAD's twin refuses where it is due and not otherwise", () => {
    const refused = all.filter(({ name }) => name === "LIDLOAD").map(({ ours }) => isFault(ours));
    expect(new Set(refused)).toEqual(new Set([true, false]));
  });

  it("LIDLOAD's twin never passes a lid that cannot be screened", () => {
    expect(made.lids[0]).toBe("not ruled out (this is no approval)");
    const passed = Object.keys(badLids).filter((_, i) => !/^(#|Err)/.test(String(made.lids[i + 1])));
    expect(passed).toEqual([]);
  });
});

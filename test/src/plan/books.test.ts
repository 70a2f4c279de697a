import { Trouble } from "../../../shared/outcome";
import { enter } from "../../../src/plan/books";
import { within } from "../../within";

const habits = { packetMakes: 1, dyeRate: 0.01, catalyzedMonths: 3 };
const days = { in: 46095.35, out: 46096.33 };

describe("the books", () => {
  it("mix nothing while there is enough, and bring nothing that is at its rate to its rate", () => {
    const { entry, tub } = enter({ fluid: 5, strength: 0.01, since: 46000 }, { fluid: 3, uptake: 1, drips: 0.5, days }, habits);
    expect(entry).toMatchObject({ mixed: 0, packets: 0, dye: 0, left: 3.5 });
    expect(tub).toEqual({ fluid: 3.5, strength: 0.01, since: 46000 });
  });

  it("start a tub afresh that the load before emptied", () => {
    const emptied = enter({ fluid: 1, strength: 0.01, since: 46000 }, { fluid: 1, uptake: 1, drips: 0, days }, habits).tub;
    expect(emptied.since).toBeUndefined();
    expect(enter(emptied, { fluid: 1, uptake: 0.5, drips: 0, days }, habits).tub.since).toBe(46095);
  });

  it("lose no more to drips than is there", () => {
    const { entry } = enter({ fluid: 0, strength: 0.01 }, { fluid: 2, uptake: 1.5, drips: 9 }, habits);
    expect(entry).toMatchObject({ drips: 0.5, left: 0, useBy: undefined });
  });

  it("carry on a strength that is too much, thinned by what is added", () => {
    const { entry, tub } = enter({ fluid: 3, strength: 0.04 }, { fluid: 4, uptake: 1, drips: 0 }, habits);
    expect(entry.dye).toBeInstanceOf(Trouble);
    within(tub.strength, 0.03, 1e-15);
  });

  it("let the use-by day end at midnight", () => {
    const old = { fluid: 5, strength: 0.01, since: 46004 };
    const use = (out: number) => enter(old, { fluid: 3, uptake: 1, drips: 0, days: { in: 46093, out } }, habits).entry.useBy;
    // EDATE(2025-12-13, 3) is 2026-03-13, 46094.
    expect(use(46094.99)).toBe(46094);
    expect(use(46095.3)).toBeInstanceOf(Trouble);
  });
});

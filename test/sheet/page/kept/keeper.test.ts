import { Keeper, type State, Stuck } from "../../../../sheet/page/kept/keeper";

beforeEach(() => jest.useFakeTimers({ now: 1_000_000 }));
afterEach(() => jest.useRealTimers());

function setUp(save: (moment: number) => Promise<void> = async () => {}) {
  const saved: number[] = [];
  const told: State[] = [];
  const keeper = new Keeper(
    async (moment) => {
      await save(moment);
      saved.push(moment);
    },
    (state) => told.push(state),
    0,
  );
  return { keeper, saved, told };
}

describe("the keeper", () => {
  it("keeps once, within a second of the last of a run of changes", async () => {
    const { keeper, saved, told } = setUp();
    for (let i = 0; i < 5; i++) {
      keeper.changed();
      await jest.advanceTimersByTimeAsync(200);
    }
    expect(saved).toEqual([]);
    await jest.advanceTimersByTimeAsync(800);
    expect(saved).toHaveLength(1);
    expect(told.at(-1)).toBe("kept");
    expect(keeper.waits).toBe(false);
  });

  it("keeps at once when told to, and nothing where nothing changed", async () => {
    const { keeper, saved } = setUp();
    expect(await keeper.flush()).toBe(true);
    expect(saved).toEqual([]);
    keeper.changed();
    expect(await keeper.flush()).toBe(true);
    await jest.advanceTimersByTimeAsync(2_000);
    expect(saved).toHaveLength(1);
  });

  it("never gives two versions one moment, nor an earlier one where the clock was put back", async () => {
    const { keeper, saved } = setUp();
    for (const now of [1_000_000, 1_000_000, 900_000]) {
      jest.setSystemTime(now);
      keeper.changed();
      await keeper.flush();
    }
    expect(saved).toEqual([1_000_000, 1_000_001, 1_000_002]);
  });

  it.each([
    { what: "a full disk", error: new DOMException("", "QuotaExceededError"), state: "full" },
    { what: "a browser that refuses", error: new DOMException("", "InvalidStateError"), state: "failed" },
    { what: "an engine that fails", error: new Stuck("colFixed"), state: "stuck" },
  ])("says $state of $what, and tries again with the next change", async ({ error, state }) => {
    let fails = true;
    const { keeper, saved, told } = setUp(async () => {
      if (fails) throw error;
    });
    keeper.changed();
    expect(await keeper.flush()).toBe(false);
    expect([told.at(-1), keeper.waits]).toEqual([state, true]);
    fails = false;
    keeper.changed();
    expect(await keeper.flush()).toBe(true);
    expect([saved.length, told.at(-1), keeper.waits]).toEqual([1, "kept", false]);
  });

  it("keeps what was changed while it was keeping", async () => {
    let finish = () => {};
    const { keeper, saved, told } = setUp(() => new Promise((done) => (finish = done)));
    keeper.changed();
    const first = keeper.flush();
    await Promise.resolve();
    keeper.changed();
    finish();
    await first;
    expect([told.at(-1), keeper.waits]).toEqual(["waiting", true]);
    const second = keeper.flush();
    await Promise.resolve();
    finish();
    await second;
    expect([saved.length, told.at(-1)]).toEqual([2, "kept"]);
  });
});

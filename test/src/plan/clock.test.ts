import fc from "fast-check";
import { clockOf, day } from "../../../src/plan/clock";
import { within } from "../../within";

const hour = 3600;
const clock = clockOf(8 * hour, 20 * hour);
const at = (days: number, hours: number) => days * day + hours * hour;

describe("the clock", () => {
  it.each([
    { from: at(0, 0), lasting: 4, is: at(0, 8), why: "waits for the opening" },
    { from: at(0, 9), lasting: 4, is: at(0, 9), why: "starts at once" },
    { from: at(0, 16), lasting: 4, is: at(0, 16), why: "ends at closing" },
    { from: at(0, 16.01), lasting: 4, is: at(1, 8), why: "would pass closing" },
    { from: at(2, 23), lasting: 0, is: at(3, 8), why: "is closed at night" },
    { from: at(0, 8), lasting: 12, is: at(0, 8), why: "fills the day" },
    { from: at(1, 0) - 1e-7, lasting: 1, is: at(1, 8), why: "takes a moment before midnight for midnight" },
  ])("$why", ({ from, lasting, is }) => within(clock.first(from, lasting * hour), is, 1e-6));

  it("opens again on the next day that is not off", () => {
    const weekend = clockOf(8 * hour, 20 * hour, (day) => day === 1 || day === 2);
    within(weekend.first(at(0, 19), 2 * hour), at(3, 8), 1e-6);
    within(weekend.first(at(1, 9), hour), at(3, 8), 1e-6);
    within(weekend.nextOpening(at(0, 9)), at(3, 8), 1e-6);
    within(weekend.nextOpening(at(0, 7)), at(0, 8), 1e-6);
    within(weekend.closing(at(0, 9)), at(0, 20), 1e-6);
    expect(weekend.closing(at(1, 9))).toBe(Number.NEGATIVE_INFINITY);
    expect(weekend.closing(at(3, 7))).toBe(Number.NEGATIVE_INFINITY);
  });

  it("gives up on a shop that never opens", () => expect(() => clockOf(0, hour, () => true).first(0, 1)).toThrow());

  it("never ends before what it was asked for, and never past closing", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 23 }),
        fc.integer({ min: 1, max: 24 }),
        fc.double({ min: 0, max: 50 * day, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { maxLength: 20 }),
        (opens, open, from, share, off) => {
          const closes = Math.min(24, opens + open) * hour;
          const other = clockOf(opens * hour, closes, (day) => off.includes(day));
          const lasting = share * (closes - opens * hour);
          const first = other.first(from, lasting);
          expect(first).toBeGreaterThanOrEqual(from);
          expect(off).not.toContain(Math.floor(first / day + 1e-9));
          within(other.first(first, lasting), first, 1e-6);
          expect(other.closing(first) - first).toBeGreaterThanOrEqual(lasting - 1e-3);
        },
      ),
    ));
});

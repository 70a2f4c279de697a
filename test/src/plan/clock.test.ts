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

  it("counts open hours across nights", () => {
    within(clock.between(at(0, 19), at(1, 9)), 2 * hour, 1e-6);
    within(clock.between(at(0, 21), at(1, 7)), 0, 1e-6);
    within(clock.between(at(0, 0), at(10, 0)), 120 * hour, 1e-6);
  });

  it("stops work at closing and goes on in the morning", () => {
    within(clock.after(at(0, 19), hour), at(0, 20), 1e-6);
    within(clock.after(at(0, 19), 1.5 * hour), at(1, 8.5), 1e-6);
    within(clock.after(at(0, 22), 13 * hour), at(2, 9), 1e-6);
  });

  it("undoes between with after", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 23 }),
        fc.integer({ min: 1, max: 24 }),
        fc.double({ min: 0, max: 50 * day, noNaN: true }),
        fc.double({ min: 1, max: 50 * day, noNaN: true }),
        (opens, open, from, work) => {
          const other = clockOf(opens * hour, Math.min(24, opens + open) * hour);
          within(other.between(from, other.after(from, work)), work, 1e-4);
        },
      ),
    ));
});

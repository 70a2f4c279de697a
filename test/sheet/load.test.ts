import { demoBook } from "../../sheet/book";
import { model } from "../../sheet/engine";
import { kinds, margin, priced, spoiled, tubs } from "../../sheet/loadlines";
import { list, pieces, planned, priceLast, tubFirst } from "../../sheet/loadsheet";
import { blanks, shop } from "../../src/demo";
import { ask, spill } from "../ask";
import { near } from "../within";
import { addresses } from "./addresses";

// The engine times every change on the console.
jest.spyOn(console, "debug").mockImplementation();

type Model = ReturnType<typeof model>;
const at = (book: Model, address: string) => book.getters.getEvaluatedCell({ sheetId: "loads", ...addresses(address) });
const zone = (book: Model, columns: string, first: number, count: number) =>
  Array.from({ length: count }, (_, i) => [...columns].map((column) => at(book, `${column}${first + i}`).value));
const type = (book: Model, address: string, content: string) =>
  book.dispatch("UPDATE_CELL", { sheetId: "loads", ...addresses(address), content });

const book = model(demoBook());
const range = Object.entries(shop);
const counts = kinds.map(({ wood }) => blanks.filter(({ species }) => species === wood).length);
const rows = kinds.map(({ wood, thickness, width, length }, i) => [`${wood} blanks`, counts[i], thickness, width, length, wood]);
const plan = spill("PLAN", rows, 6, 12, "2026-03-14 08:00", range);
const shopping = spill("SHOPPINGLIST", rows, 6, 12, "2026-03-14 08:00", range);

function alike(seen: unknown, expected: unknown): void {
  if (typeof expected === "number") near(seen, expected);
  else expect(seen).toBe(expected);
}

describe("the loads to come", () => {
  it("shows no error anywhere", () => {
    const cells = Object.values(book.getters.getEvaluatedCells("loads"));
    expect(cells.filter(({ type }) => type === "error")).toEqual([]);
  });

  it("plans each of three kinds as a call does", () => {
    expect(plan).toHaveLength(1 + kinds.length);
    zone(book, "ABCDEFGHIJKLMNO", planned.first, plan.length).forEach((row, i) => {
      row.forEach((value, column) => {
        alike(value, plan[i][column]);
      });
    });
  });

  it("writes dates as dates", () => {
    expect(at(book, `J${planned.first + 1}`).formattedValue).toBe("2026-06-14");
    expect(at(book, `K${planned.first + 1}`).formattedValue).toBe("2026-03-14 08:30");
  });

  it("lists what that takes as a call does", () => {
    expect(shopping).toHaveLength(list.last - list.first + 1);
    zone(book, "BCD", list.first, shopping.length).forEach((row, i) => {
      row.forEach((value, column) => {
        alike(value, shopping[i][column]);
      });
    });
  });

  it("costs it, shares it and prices it to the cent", () => {
    const quantities = priced.map(([name]) => shopping.find(([line]) => line === name)![1]);
    const cost = ask(
      "RUNCOST",
      quantities,
      priced.map(([, price]) => price),
    ) as number;
    expect(at(book, `I${priceLast + 1}`).value).toBe(cost);
    const one = ask(
      "PIECECOST",
      cost,
      counts.reduce((a, b) => a + b),
      spoiled,
    ) as number;
    near(at(book, `I${priceLast + 4}`).value, one);
    expect(at(book, `I${priceLast + 6}`).value).toBe(ask("PRICETAG", one, margin));
    const shares = zone(book, "L", list.first, kinds.length).map(([share]) => share as number);
    expect(shares).toEqual(spill("SPLITCOST", cost, counts).flat());
    expect(Math.round(shares.reduce((a, b) => a + b) * 100)).toBe(Math.round(cost * 100));
  });

  it("buys what covers the fluid to mix", () => {
    const bought = spill(
      "WHATTOBUY",
      shopping[0][1],
      tubs.map(([size]) => size),
      tubs.map(([, price]) => price),
    );
    expect(zone(book, "MN", tubFirst, bought.length)).toEqual(bought);
  });

  it("names a row that cannot be planned and plans the rest", () => {
    const own = model(demoBook());
    const row = pieces.first + kinds.length;
    ["odd piece", "2", "0.75", "0.75", "5", "silver mapel"].forEach((content, i) => {
      type(own, `${"BCDEFG"[i]}${row}`, content);
    });
    const faulty = planned.first + kinds.length + 1;
    expect(at(own, `A${faulty}`).value).toBe("odd piece");
    expect(at(own, `C${faulty}`).message).toContain("silver maple");
    expect(at(own, `C${list.last}`).value).toBe(1);
    alike(at(own, `E${planned.first + 1}`).value, plan[1][4]);
  });
});

import { pieceLabels, tubLabel } from "../../../src/labels/labellines";

it("numbers the pieces of a row, leaves a single one its name, and goes on from a piece", () => {
  const rows = [
    { name: "elder", wood: "boxelder", count: 2, dry: "20.6 g", color: "blue" },
    { name: "no. 7", wood: "white ash", count: 1 },
  ];
  const all = pieceLabels(rows, 1, "2026-03-14");
  expect(all).toEqual([
    ["elder, 1 of 2", "boxelder", "oven-dry 20.6 g", "blue, 2026-03-14"],
    ["elder, 2 of 2", "boxelder", "oven-dry 20.6 g", "blue, 2026-03-14"],
    ["no. 7", "white ash", "oven-dry ________", "2026-03-14"],
  ]);
  expect(pieceLabels(rows, 3, "")).toEqual([["no. 7", "white ash", "oven-dry ________", "________"]]);
});

it("leaves room to write on where the book knows nothing", () =>
  expect(tubLabel({ color: "" }).slice(0, 3)).toEqual(["Mixed resin, clear", "mixed ________, use by ________", "dye ________"]));

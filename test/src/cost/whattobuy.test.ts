import { ask, fault, spill } from "../../ask";
import published from "../../published/cost.json";
import { within } from "../../within";

const rows = published.flatMap((row) =>
  row.sizes
    ? [{ ...row, need: row.need!, sizes: row.sizes, prices: row.prices!, expected: row.expected as { price: number; volume: number } }]
    : [],
);

describe("WHATTOBUY", () => {
  it.each(rows)(
    "$need qt of $sizes at $prices: $expected.volume qt for $expected.price ($source)",
    ({ need, sizes, prices, expected, off }) => {
      const answer = spill("WHATTOBUY", need, sizes, prices) as (string | number)[][];
      expect(answer.map(([size]) => size)).toEqual([...sizes, "volume", "price"]);
      const [volume, price] = answer.slice(-2).map(([, sum]) => sum);
      within(price, expected.price, off);
      within(volume, expected.volume, off);
      const counts = answer.slice(0, -2).map(([, count]) => count as number);
      within(
        counts.reduce((sum, n, i) => sum + n * sizes[i], 0),
        expected.volume,
        1e-6,
      );
      within(
        counts.reduce((sum, n, i) => sum + n * prices[i], 0),
        expected.price,
        1e-6,
      );
    },
  );

  it("answers for six sizes and 500 qt, whatever their common measure", () => {
    const cases: [number[] | string[], number[]][] = [
      [
        [0.25, 0.5, 1, 4, 20, 55],
        [9, 15, 27, 92, 410, 1090],
      ],
      [
        [0.946, 1.057, 3.785, 5.283, 18.93, 2.11],
        [21, 22.5, 78, 105, 365, 44.5],
      ],
      [
        [0.95, 1.9, 3.8, 5.05, 18.9, 2.15],
        [9.5, 19, 38, 50.5, 189, 21.5],
      ],
      [
        ["1 L", "5 L", "1 gal", "20 L", "1 qt", "5 gal"],
        [22, 99, 78, 350, 21.5, 370],
      ],
    ];
    for (const [sizes, prices] of cases) expect(typeof ask("WHATTOBUY", 500, sizes, prices)).toBe("number");
  });

  it("reads sizes in any unit and tells them in quarts", () =>
    expect(spill("WHATTOBUY", "6 qt", ["1 qt", "1 gal"], [20, 68])).toEqual([
      [1, 2],
      [4, 1],
      ["volume", 6],
      ["price", 108],
    ]));

  it("covers a need to the billionth part, and not more", () => {
    expect(spill("WHATTOBUY", "3 L", "1 L", 10)[0][1]).toBe(3);
    expect(spill("WHATTOBUY", 3 * (1 + 1e-10), 1, 10)[0][1]).toBe(3);
    expect(spill("WHATTOBUY", 3.00001, 1, 10)[0][1]).toBe(4);
  });

  it("adds up in decimals", () =>
    expect(spill("WHATTOBUY", 0.3, 0.1, 0.1)).toEqual([
      [0.1, 3],
      ["volume", 0.3],
      ["price", 0.3],
    ]));

  it("buys nothing for a need of 0", () =>
    expect(spill("WHATTOBUY", 0, [1, 4], [20, 68])).toEqual([
      [1, 0],
      [4, 0],
      ["volume", 0],
      ["price", 0],
    ]));

  it("passes over headings and gaps", () =>
    expect(spill("WHATTOBUY", 4, ["Size", 1, "", 4, 0], ["Price", 20, "", 68, 0]).map(([size]) => size)).toEqual([
      1,
      4,
      "volume",
      "price",
    ]));

  it("lists each size, also one that is never worth buying", () =>
    expect(spill("WHATTOBUY", 4, [4, 4, 1], [70, 60, 61]).map(([, count]) => count)).toEqual([0, 1, 0, 4, 60]));

  it.each([
    [6, [1, 4], [20, ""], "cell 2: price is missing: type a value such as 68"],
    [6, [1, 4], [20, 0], "cell 2: price is missing: type a value such as 68"],
    [
      6,
      [1, "4 furlong"],
      [20, 68],
      "cell 2: size: “furlong” in “4 furlong” is not a known unit: type m³, L, mL, cm³, in³, ft³, gal, qt, pt, cup, fl oz, tbsp, tsp",
    ],
    [6, [1, -4], [20, 68], "cell 2: size must be from 0.001 qt to 1000000 qt: -4 qt is outside"],
    [6, [1, 4], [20, "$68"], "cell 2: price: “$68” is text: type the amount as a number, without a currency sign"],
    [6, [1, 4], [20], "sizes are 2 cells and prices 1: give the same number of each"],
    [6, ["Size", ""], ["Price", ""], "no size has a price beside it: type a size such as 1 qt with its price"],
    [-1, [1], [20], "resin needed must be from 0 qt to 1000000 qt: -1 qt is outside"],
    ["", [1], [20], "resin needed is missing: type a value such as 6 qt"],
  ])("refuses a need of %j, sizes %j, prices %j in words", (need, sizes, prices, message) =>
    expect(fault("WHATTOBUY", need, sizes, prices)).toEqual({ error: "#VALUE!", message }),
  );

  it("says so rather than guess where no search would end", () => {
    const sizes = ["1 L", "5.1 L", "1 gal", "2.3 L", "1 qt", "4.7 L"];
    expect(fault("WHATTOBUY", 500, sizes, [1, 5.1, 3.785411784, 2.3, 0.946352946, 4.7])).toEqual({
      error: "#N/A",
      message: "there are too many ways to buy it: leave out sizes that you would not buy, or round them",
    });
  });

  it.each([
    ["a speck of a size for a lake of a need", 1e6, [0.001], [0.0001]],
    [
      "a hundred sizes",
      12345.678,
      Array.from({ length: 100 }, (_, i) => 0.001 + i * 1.37),
      Array.from({ length: 100 }, (_, i) => 1 + i * 2.09),
    ],
    ["two sizes without a common measure", 1e6, [Math.PI, Math.E], [Math.PI, Math.E]],
  ])("does not hang on %s", (_, need, sizes, prices) => {
    expect(spill("WHATTOBUY", need, sizes, prices)).not.toEqual([]);
  });

  it("takes a hundred sizes and no more", () => {
    const many = Array.from({ length: 101 }, (_, i) => i + 1);
    expect(fault("WHATTOBUY", 5, many, many).message).toBe("sizes are 101: give at most 100");
  });
});

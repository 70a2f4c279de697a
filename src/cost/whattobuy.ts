import { type Arg, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { amount, decimal, wholes } from "../../shared/money";
import { badInput, noAnswer, said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { table } from "../../shared/result";
import { fromInternal, plainUnits } from "../../shared/unit";
import { text } from "../../shared/words";
import { cheapest } from "./cheapest";
import { besides, type Standing, standing } from "./sidebyside";

/** Sizes that a list may have. */
const longest = 100;

/** It knows no shop: a plain number is quarts. */
const quart = plainUnits("US").fluid;

/** A volume in quarts as the decimal it was typed as; the way through the internal unit costs the sixteenth digit. */
const inQuarts = (volume: number) => decimal(Number(fromInternal(volume, quart).toPrecision(15)));

/** The first column: a size, or the word for a sum. */
const sizeOrSum: Arg<number | string> = text("size in quarts, then volume and price", "4");

const plain = (n: number) => as<Quantity<"number">>(n);

function bought(need: number, sizes: Standing, prices: Standing) {
  const offers = besides(sizes, prices).map(([size, price]) => ({ size: inQuarts(size), price: decimal(price) }));
  if (!offers.length) throw badInput`no size has a price beside it: type a size such as ${said("fluid", quart.factor)} with its price`;
  if (offers.length > longest) throw badInput`sizes are ${offers.length}: give at most ${longest}`;
  const [wanted, ...volumes] = wholes([inQuarts(need), ...offers.map(({ size }) => size)]);
  const money = wholes(offers.map(({ price }) => price));
  const counts = cheapest(
    wanted - wanted / 1_000_000_000n,
    volumes.map((size, i) => ({ size, price: money[i] })),
  );
  if (!counts) throw noAnswer`there are too many ways to buy it: leave out sizes that you would not buy, or round them`;
  return offers.map((offer, i) => ({ ...offer, count: counts[i] }));
}

/** What to buy: the cheapest purchase that covers a need, and of equally cheap ones the one with least left over. */
export const whattobuy = define({
  name: "WHATTOBUY",
  per: "call",
  asks: "What should I buy?",
  args: {
    need: quantity("fluid", "resin needed", 6, [0, 1e6]),
    sizes: standing("sizes", quantity("fluid", "size", 4, [0.001, 1e6])),
    prices: standing("prices", quantity("money", "price", 68, [0.0001, 1e12])),
  },
  returns: table({ size: sizeOrSum, count: quantity("number", "how many to buy, then the totals", 1) }, false),
  format: { size: "General", count: "General" },
  equation: "the cheapest counts whose sizes add up to at least {need}; of equally cheap ones the smallest volume",
  source: "integer programming: dynamic programming over the sizes' common measure, or branch and bound; sums in decimals",
  accuracy: "exact: nothing cheaper covers it; if there are too many ways to try, it says so",
  cautions: ["storage"],
  worked: {
    typed: [6, [1, 4], [20, 68]],
    gives: [
      [1, 2],
      [4, 1],
      ["volume", 6],
      ["price", 108],
    ],
  },
  run: ({ need, sizes, prices }) => {
    const lines = bought(need, sizes, prices);
    const total = (of: "size" | "price") => amount(lines.reduce((sum, line) => sum.plus(line[of].times(line.count)), decimal(0)));
    return [
      ...lines.map(({ size, count }) => ({ size: size.toNumber(), count: plain(count) })),
      { size: "volume", count: plain(total("size")) },
      { size: "price", count: plain(total("price")) },
    ];
  },
});

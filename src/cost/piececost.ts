import { count, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";

/** Cost of one good piece: spoiled ones are paid for by the rest. */
export const piececost = define({
  name: "PIECECOST",
  per: "piece",
  asks: "What does one good piece cost?",
  args: {
    total: quantity("money", "cost of the run", 62, [0, 1e12]),
    pieces: count("pieces in the run", 20),
    spoiled: optional(count("spoiled pieces", 2), 0),
  },
  returns: cell(quantity("money", "cost of one good piece", 3.44)),
  format: "0.00",
  equation: "{total} / ({pieces} − {spoiled})",
  source: "arithmetic",
  accuracy: "exact for the numbers given, not rounded: round the price, not this",
  cautions: [],
  worked: { typed: [62, 20, 4], gives: 3.875 },
  twin: unless("{spoiled}>={pieces}", "{total}/({pieces}-{spoiled})"),
  run: ({ total, pieces, spoiled }) => {
    if (spoiled >= pieces) throw noAnswer`no good piece is left: ${spoiled} of ${pieces} spoiled`;
    return as(total / (pieces - spoiled));
  },
});

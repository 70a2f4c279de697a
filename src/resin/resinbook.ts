import { type Arg, date, isBlank, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, noAnswer, Trouble } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { type Made, table } from "../../shared/result";
import { type Line, rows } from "../../shared/whole";
import { after, type Balance, empty } from "./balance";
import { useBy } from "./expiry";
import { catalyzedMonths } from "./settings";

type Fluid = Quantity<"fluid">;
const fluid = (label: string, example: number) => quantity("fluid", label, example, [0, 1e6]);

const amount = fluid("taken up", 0.8);
/** A volume, or the word that ends a book and starts the next. */
const takenUp: Arg<Fluid | "emptied"> = {
  ...amount,
  read: (cell, units) => (typeof cell === "string" && cell.trim().toLowerCase() === "emptied" ? "emptied" : amount.read(cell, units)),
};

const columns = {
  date: date("date", "2026-03-14"),
  added: optional(fluid("added", 2), 0),
  dye: optional(quantity("powder", "dye added", 0.5, [0, 1e6]), 0),
  taken: optional(takenUp),
};
const width = Object.keys(columns).length;

type Entry = Line<typeof columns>;

const returns = table(
  { volume: quantity("fluid", "volume", 1.2), rate: quantity("strength", "dye rate", 0.25), useBy: date("use-by", "2026-04-30") },
  false,
);
type Standing = Made<typeof returns>[number];

const nothing: Standing = { volume: undefined, rate: undefined, useBy: undefined };

/** An empty row; some spreadsheets hand blank cells in as 0. */
const isUntouched = ({ cells }: Entry) => cells.every((cell) => isBlank(cell) || cell === 0);

/** The balance after a run; an empty tub has neither a dye rate nor a date. */
const shown = ({ fluid, dye, since }: Balance, months: number): Standing => ({
  volume: as<Fluid>(fluid),
  rate: fluid > 0 ? as<Quantity<"strength">>(dye / fluid) : undefined,
  useBy: since === undefined ? undefined : as<Quantity<"date">>(useBy(since, months)),
});

/** The rows of the answer, one for each row of the ledger. */
function kept(runs: readonly Entry[], months: number): Standing[] {
  const answer = new Array<Standing>((runs.at(-1)?.index ?? -1) + 1).fill(nothing);
  let balance: Balance = empty;
  let faulty: number | undefined;
  for (const run of runs) {
    if (isUntouched(run)) continue;
    try {
      if (run.trouble) throw run.trouble;
      const { date, added = 0, dye = 0, taken = 0 } = run.given;
      if (faulty !== undefined && taken !== "emptied") throw noAnswer`waits for row ${faulty}: fix that first`;
      balance = after(balance, { date, added, dye, taken });
      faulty = undefined;
      answer[run.index] = shown(balance, months);
    } catch (trouble) {
      if (!(trouble instanceof Trouble)) throw trouble;
      faulty ??= run.index + 1;
      answer[run.index] = { volume: trouble, rate: trouble, useBy: trouble };
    }
  }
  return answer;
}

/** The ledger of the mixed resin: the balance after each run, one row for each. */
export const resinbook = define({
  name: "RESINBOOK",
  per: "call",
  asks: "How much mixed resin is left, and when does it expire?",
  args: { runs: rows("runs", columns) },
  shop: { months: catalyzedMonths },
  returns,
  format: { volume: "0.00", rate: "0.00", useBy: "yyyy-mm-dd" },
  equation:
    "volume = volume before + added − taken up; dye rate = (dye before + dye added) / (volume before + added); use-by = the same day of the month as the oldest part, {months} later",
  source: "conservation of resin and dye; the oldest part decides: common practice, no source; EDATE: OpenDocument 1.3 part 4, 6.10.5",
  accuracy:
    "exact for what you write down: enter everything that left as taken up, drips included; wood is assumed to take resin and dye alike",
  cautions: ["resin", "storage"],
  worked: {
    typed: [
      [
        ["2026-01-31", 2, 0.5, 0.8],
        ["2026-02-20", 1, 0.36, 0.7],
        ["2026-03-10", 0, 0, "emptied"],
      ],
    ],
    gives: [
      [1.2, 0.25, 46142],
      [1.5, 0.3, 46142],
      [0, "", ""],
    ],
  },
  run: ({ runs, months }) => {
    if (runs.some(({ cells }) => cells.length > width)) throw badInput`runs takes four columns: date, added, dye added, taken up`;
    return kept(runs, months);
  },
});

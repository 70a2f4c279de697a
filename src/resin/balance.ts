import { badInput, said } from "../../shared/outcome";

/** Mixed resin on hand: the volumes of resin and of the dye in it, and the day its oldest part was mixed. */
export interface Balance {
  readonly fluid: number;
  readonly dye: number;
  readonly since?: number;
}

export const empty: Balance = { fluid: 0, dye: 0 };

/** What one run changes: resin and dye are added, then resin is taken and takes its share of the dye along. */
export interface Run {
  readonly date: number;
  readonly added: number;
  readonly dye: number;
  readonly taken: number | "emptied";
}

/** A remainder below this share of what was there is rounding error and counts as empty. */
const slack = 1e-9;

const older = (since: number | undefined, day: number) => Math.min(since ?? day, day);

/** The books after a run. */
export function after(balance: Balance, { date, added, dye, taken }: Run): Balance {
  const fluid = balance.fluid + added;
  if (taken === "emptied") return empty;
  if (taken > fluid * (1 + slack)) throw badInput`${said("fluid", taken)} taken up, but there was only ${said("fluid", fluid)}`;
  if (dye > 0 && fluid === 0) throw badInput`dye was added, but there was no resin`;
  const left = fluid - taken;
  if (left <= fluid * slack) return empty;
  return {
    fluid: left,
    dye: (balance.dye + dye) * (left / fluid),
    since: added > 0 ? older(balance.since, Math.floor(date)) : balance.since,
  };
}

import { capital } from "../../shared/capital";
import { counted, type Ended, type Work } from "../../shared/host";
import { asTyped, callsOurs } from "../calls";

const batch = 100;

/** A formula of ours that Excel does not know as such: it shows #NAME?, or its name as files store it. */
const isLost = (formula: unknown, value: unknown): formula is string =>
  typeof formula === "string" && formula.startsWith("=") && callsOurs(formula) && (value === "#NAME?" || /_xldudf_/i.test(formula));

interface Found {
  readonly cell: Excel.Range;
  readonly formula: string;
  readonly parent: Excel.Range;
}

/** The lost formulas of some ranges, each with the cell that it may spill from. */
async function lostIn(context: Excel.RequestContext, ranges: readonly Excel.Range[]): Promise<Found[]> {
  for (const range of ranges) range.load("formulas, values");
  await context.sync();
  const found = ranges
    .filter((range) => !range.isNullObject)
    .flatMap((range) =>
      range.formulas.flatMap((row, r) =>
        row.flatMap((formula, c) => {
          if (!isLost(formula, range.values[r][c])) return [];
          const cell = range.getCell(r, c);
          const parent = cell.getSpillParentOrNullObject();
          cell.load("address, format/protection/locked, worksheet/protection/protected");
          parent.load("address");
          return [{ cell, formula, parent }];
        }),
      ),
    );
  await context.sync();
  return found;
}

const isAnchor = ({ cell, parent }: Found) => parent.isNullObject || parent.address === cell.address;
const isLocked = ({ cell }: Found) => cell.worksheet.protection.protected && cell.format.protection.locked;

/** Puts lost formulas in again, anchors only: writing over what spills would stop it from spilling. */
export async function reenter(context: Excel.RequestContext, ranges: readonly Excel.Range[], { progress, stop }: Work): Promise<Ended> {
  const all = (await lostIn(context, ranges)).filter(isAnchor);
  const free = all.filter((found) => !isLocked(found));
  const left = all.length - free.length;
  let done = 0;
  for (; done < free.length && !stop.aborted; progress(done / free.length)) {
    const next = free.slice(done, done + batch);
    for (const { cell, formula } of next) cell.formulas = [[asTyped(formula)]];
    await context.sync();
    done += next.length;
  }
  const told = [
    all.length ? `${capital(counted(done, "formula", "formulas"))} put in again` : "No PORE formula shows #NAME? here",
    left ? `${counted(left, "protected cell was", "protected cells were")} left as ${left === 1 ? "it is" : "they are"}` : "",
    done < free.length ? `stopped with ${free.length - done} to go` : "",
  ];
  return { done: true, words: `${told.filter(Boolean).join("; ")}.` };
}

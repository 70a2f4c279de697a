import { isEmpty } from "./argument";
import { eachPiece } from "./broadcast";
import { type Cells, shapeOf, squared } from "./columns";
import { type Contract, parameters } from "./contract";
import { type Outline, outlineOf, readGiven } from "./given";
import { badInput, type Outcome, Trouble } from "./outcome";
import { cellsOf, type Result } from "./result";
import { noShop, type Shop } from "./settings";
import { plainUnits } from "./unit";

export type ReadShop = (cells: Cells | undefined) => Shop;

const us = plainUnits("US");

/** The shop a call names as its last argument. */
export const shopOf = (outline: Outline, cells: readonly (Cells | undefined)[], readShop: ReadShop): Shop =>
  outline.contract.shop ? readShop(cells[outline.args.length]) : noShop;

/**
 * Makes the function that every host calls: a contract and its arguments' cells in, the cells of the answer out.
 * Nothing escapes it: what goes wrong with the input is an error in its cell.
 */
export function caller(readShop: ReadShop) {
  return (contract: Contract, handed: readonly (Cells | undefined)[]): Outcome[][] => {
    const cells = Array.from(handed, squared);
    const outline = outlineOf(contract);
    let units = us;
    try {
      const most = parameters(contract).length;
      if (cells.length > most) throw badInput`${contract.name} takes at most ${most} arguments: ${cells.length} were given`;
      const shop = shopOf(outline, cells, readShop);
      units = shop.units;
      return contract.per === "piece" ? eachPiece(outline, cells, shop) : once(outline, cells, shop);
    } catch (trouble) {
      if (trouble instanceof Trouble) return [[trouble.in(units)]];
      throw trouble;
    }
  };
}

function once(outline: Outline, cells: readonly (Cells | undefined)[], shop: Shop): Outcome[][] {
  const returns: Result = outline.contract.returns;
  if (isUnfilled(outline, cells, shop)) return [[""]];
  const { given, typedIn } = readGiven(outline, cells, shop);
  const over = returns.form === "spread" ? cells[outline.args.findIndex(([name]) => name === returns.over)] : undefined;
  return cellsOf(returns, outline.contract.run(given), shop.units, over ? shapeOf(over) : { rows: 1, columns: 1 }, typedIn);
}

/** True where every required argument refers to blank cells: nothing was filled in yet. */
function isUnfilled({ args }: Outline, cells: readonly (Cells | undefined)[], shop: Shop): boolean {
  const required = args.flatMap(([, arg], i) => (arg.optional ? [] : [{ arg, own: cells[i] }]));
  return (
    required.length > 0 && required.every(({ arg, own }) => own?.every((line) => line.every((cell) => isEmpty(cell, arg, shop.units))))
  );
}

import type { SheetHost } from "../shared/host";
import { type Cell, isFault } from "../shared/outcome";
import type { ShopRows } from "../src/run/answers";
import { momentOf } from "../src/run/hours";
import { mostLoads, type Piece, type Run } from "../src/run/schema";
import { nameOf } from "../src/wood/species";

/** A row of Blanks, and what keeps it out of a run in its own words. */
export interface Blank extends Piece {
  readonly problem?: string;
  /** Blanks does not plan it, or has none of it. */
  readonly isLeftOut?: true;
}

/** What the workbook says that a run may begin with. */
export interface Sources {
  readonly shop: ShopRows;
  readonly system: Run["system"];
  readonly chamber: number | string | undefined;
  readonly height: number | undefined;
  readonly pumpRate: number | undefined;
  readonly blanks: readonly Blank[];
  /** What is chosen on the sheet Today. */
  readonly today: { readonly loads: readonly (readonly Piece[])[]; readonly demo: number | undefined; readonly color: string };
}

const single = (cells: readonly (readonly Cell[])[] | undefined): Cell => cells?.[0]?.[0];
const numberOf = (cell: Cell): number | undefined => (typeof cell === "number" && cell > 0 ? cell : undefined);
const textOf = (cell: Cell): string => (typeof cell === "string" ? cell.trim() : "");

type Block = readonly (readonly Cell[])[] | undefined;

/** A row of pieces: name, count, thickness, width, length, wood; the oven-dry weight of one, and how full its pores get. */
function pieceOf(row: readonly Cell[], dry: Cell, full: Cell): Piece | undefined {
  const [name, count, thickness, width, length, wood] = row;
  const sizes = [thickness, width, length].map(numberOf);
  if (sizes.some((size) => size === undefined)) return undefined;
  const [a, b, c] = sizes as number[];
  const weight = numberOf(dry);
  const fullness = numberOf(full);
  return {
    name: textOf(name) || textOf(wood),
    wood: textOf(wood) || (numberOf(wood) === undefined ? "" : String(wood)),
    count: Math.max(1, Math.round(numberOf(count) ?? 1)),
    ...{ thickness: a, width: b, length: c },
    ...(weight ? { dry: weight } : {}),
    ...(fullness !== undefined && fullness <= 1.05 ? { fullness } : {}),
  };
}

const tokensOf = (rows: Block, dryColumn: number): Piece[] => (rows ?? []).flatMap((row) => pieceOf(row, row[dryColumn], undefined) ?? []);

/** The rows of Blanks below its heading, each with its color and its problem. */
function blanksOf([head = [], ...rows]: readonly (readonly Cell[])[], full: Block, wrong: Block, inPlan: Block): Blank[] {
  const color = head.findIndex((cell) => textOf(cell) === "color");
  return rows.flatMap((row, i) => {
    const piece = pieceOf(row, row[8], full?.[i]?.[0]);
    if (!piece) return [];
    const problem = textOf(wrong?.[i]?.[0]);
    const isLeftOut = textOf(inPlan?.[i]?.[0]).startsWith("left") || row[1] === 0;
    return [
      {
        ...piece,
        ...(isLeftOut ? { isLeftOut } : {}),
        ...(color < 0 ? {} : { color: textOf(row[color]) }),
        ...(problem ? { problem } : {}),
      },
    ];
  });
}

/** How full the pores of a wood get, by the rows of Blanks that have it. */
export function fullnessOf(wood: string, blanks: readonly Piece[]): number | undefined {
  const name = nameOf(wood);
  return name === undefined ? undefined : blanks.find((piece) => nameOf(piece.wood) === name)?.fullness;
}

export const withoutTub = (shop: ShopRows): ShopRows => shop.filter(([name]) => !/^tub/.test(name));

/** Reads what there is; a workbook without the template's names gives an empty shop. */
export async function sourcesOf(host: SheetHost, offset: number): Promise<Sources> {
  const read = async (name: string) => host.read(name).catch(() => undefined);
  const names = [
    "MyShop",
    "Chamber",
    "ChamberHeight",
    "PumpRate",
    "BlankRows",
    "Pieces",
    "DemoStart",
    "RunColor",
    "RunChamber",
    "RunHeight",
    "BlankFullness",
    "BlankProblem",
    "BlankInPlan",
  ];
  const [shopCells, shopChamber, shopHeight, pump, blankRows, pieces, demo, color, ownChamber, ownHeight, full, wrong, inPlan] =
    await Promise.all(names.map(read));
  const shop: (readonly [string, Cell])[] = (shopCells ?? []).flatMap((row): (readonly [string, Cell])[] => {
    const [name, value] = row;
    return typeof name === "string" && value !== "" && value !== null && value !== undefined && !isFault(value) && name !== "setting"
      ? [[name, value]]
      : [];
  });
  const [chamber, height] = [ownChamber ?? shopChamber, ownHeight ?? shopHeight];
  // A vessel other than My Shop's chamber counts as a tub.
  const isOwn = ownChamber !== undefined && single(ownChamber) !== single(shopChamber);
  const system = shop.some(([name, value]) => name === "units" && value === "SI") ? "SI" : "US";
  const loads = await Promise.all(Array.from({ length: mostLoads }, (_, i) => read(`RunLoad${i + 1}`)));
  const chosen = loads.map((rows) => tokensOf(rows, 6)).filter((load) => load.length);
  const start = numberOf(single(demo));
  return {
    shop: isOwn ? withoutTub(shop) : shop,
    system,
    chamber: numberOf(single(chamber)) ?? (textOf(single(chamber)) || undefined),
    height: numberOf(single(height)),
    pumpRate: numberOf(single(pump)),
    blanks: blankRows ? blanksOf(blankRows, full, wrong, inPlan) : tokensOf(pieces, 99),
    today: { loads: chosen, demo: start === undefined ? undefined : momentOf(start, offset), color: textOf(single(color)) },
  };
}

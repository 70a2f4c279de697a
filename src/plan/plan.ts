import { type Arg, count, date, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said, type Trouble } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { table } from "../../shared/result";
import { text } from "../../shared/words";
import { planArgs, planShop } from "./given";
import { type Planned, planned } from "./planned";

/** The columns in the order a person works; a row that cannot be planned has its label in the first. */
const columns = {
  load: { ...text("load", "1") } as Arg<string | number>,
  pieces: text("pieces", "maple, box elder"),
  count: count("count", 22),
  solids: quantity("volume", "solids", 65),
  fluid: quantity("fluid", "fluid in chamber", 2),
  uptake: quantity("fluid", "taken up", 0.4),
  mixed: quantity("fluid", "to mix", 2),
  packets: count("packets", 2),
  dye: quantity("powder", "dye", 0.5),
  useBy: date("use by", "2026-06-14"),
  in: date("in", "2026-03-14 08:30"),
  out: date("out", "2026-03-15 08:00"),
  toOven: date("to oven", "2026-03-15 09:22"),
  bake: quantity("minutes", "bake minutes", 42),
  done: date("done", "2026-03-15 10:04"),
};

/** A cell holds 32,767 characters. */
const mostText = 32_000;

const namesOf = ({ labels }: Planned): string => {
  const all = labels.join(", ");
  return all.length <= mostText ? all : `${all.slice(0, all.lastIndexOf(", ", mostText))} and more`;
};

const lineOf = (load: Planned, i: number) => ({
  load: (i + 1) as string | number,
  pieces: namesOf(load),
  count: as<Quantity<"count">>(load.count),
  solids: as<Quantity<"volume">>(load.arrangement.solids),
  fluid: as<Quantity<"fluid">>(load.arrangement.fluid),
  uptake: as<Quantity<"fluid">>(load.uptake),
  mixed: as<Quantity<"fluid">>(load.mixed),
  packets: as<Quantity<"count">>(load.packets),
  dye: load.dye as Quantity<"powder"> | Trouble,
  useBy: load.useBy as Quantity<"date"> | Trouble | undefined,
  in: as<Quantity<"date">>(load.in),
  out: as<Quantity<"date">>(load.out),
  toOven: as<Quantity<"date">>(load.toOven),
  bake: as<Quantity<"minutes">>(load.size.bake),
  done: as<Quantity<"date">>(load.done),
});

/** A row that cannot be planned: its label, and why in every other cell. */
const faulty = (label: string, trouble: Trouble) => ({
  ...(Object.fromEntries(Object.keys(columns).map((name) => [name, trouble])) as Record<keyof typeof columns, Trouble>),
  load: label as string | number,
});

export const plan = define({
  name: "PLAN",
  per: "call",
  asks: "In what order do I soak and bake them all?",
  args: planArgs,
  shop: planShop,
  returns: table(columns),
  format: {
    load: "0",
    pieces: "General",
    count: "0",
    solids: "0.0",
    fluid: "0.00",
    uptake: "0.00",
    mixed: "0.00",
    packets: "0",
    dye: "0.00",
    useBy: "yyyy-mm-dd",
    in: "yyyy-mm-dd hh:mm",
    out: "yyyy-mm-dd hh:mm",
    toOven: "yyyy-mm-dd hh:mm",
    bake: "0",
    done: "yyyy-mm-dd hh:mm",
  },
  equation:
    "sizes in turn, each in as few loads as PERLOAD allows, balanced; mixed = fluid in chamber − on hand, up to whole packets of {packetMakes}; on hand after = on hand + mixed − taken up − drips; in = first moment with {loadingMinutes} before it and {vacuumHours} after it between {opens} and {closes}; out = first moment after {soakHours} more with {loadingMinutes} to take out; then the next load goes in, the pieces are wrapped at {wrapMinutesPerPiece} each and baked in batches of {ovenShelves} shelves",
  source:
    "the shop's own rules: common practice, no source; chamber as ARRANGE, uptake as UPTAKE, dye as DYETOPUP, bake as BAKE, use by as EXPIRY",
  accuracy:
    "one person, one chamber, one oven, one colour, every day the same hours: days off, a second pair of hands, warming the oven up and opening its door, the height of a shelf, draining, cooling, weighing and resin lost as vapour are not in it. Loading and taking out come before wrapping. A size of several woods is arranged by its lightest and baked as long as its slowest. Where a start is given, ready by is not looked at",
  cautions: ["chamber", "ballast", "resin", "storage", "oven"],
  worked: {
    typed: [[["maple", 12, 0.75, 0.75, 5, 0.45]], 6, 10, "2026-03-14 08:00"],
    gives: [
      Object.values(columns).map(({ label }) => label),
      [
        1,
        "maple",
        12,
        38.0553519,
        1.54761517,
        0.248186878,
        2,
        2,
        0.5,
        46187,
        46095.3541667,
        46096.3333333,
        46096.3625,
        46.6143115,
        46096.3948710494,
      ],
    ],
  },
  steps: (given) => {
    const { loads, unplanned, left } = planned(given);
    return {
      loads: said("count", loads.length),
      "pieces planned": said(
        "count",
        loads.reduce((sum, { count }) => sum + count, 0),
      ),
      "rows not planned": said("count", unplanned.length),
      "fluid left": said("fluid", left),
    };
  },
  run: (given) => {
    const { loads, unplanned } = planned(given);
    return [...loads.map(lineOf), ...unplanned.map(({ label, trouble }) => faulty(label, trouble))];
  },
});

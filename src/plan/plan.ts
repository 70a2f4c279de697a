import { type Arg, count, date, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { type Said, said, type Trouble } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { table } from "../../shared/result";
import { text } from "../../shared/words";
import { endsOf } from "./ends";
import { planArgs, planShop } from "./given";
import { contentOf, lateBy, momentOf, useByOf } from "./plancells";
import { type Plan, type Planned, planOf } from "./planned";

/** A day and hour, or words such as "day 1 08:30" in a plan without dates. */
const moment = (label: string, example: string): Arg<Quantity<"date"> | string> => date(label, example) as Arg;

/** The columns in the order a person works; a row that cannot be planned has its label in the first. */
const columns = {
  load: { ...text("load", "1") } as Arg<string | number>,
  pieces: text("pieces", "10 box elder, 2 maple"),
  color: text("color", "blue"),
  count: count("count", 22),
  solids: quantity("volume", "solids", 65),
  pour: quantity("fluid", "to pour", 1.6),
  add: quantity("fluid", "to add", 0.2),
  uptake: quantity("fluid", "taken up", 0.4),
  mixed: quantity("fluid", "to mix", 2),
  packets: count("packets", 2),
  dye: quantity("powder", "dye", 0.5),
  useBy: moment("use by", "2026-06-14"),
  in: moment("in", "2026-03-14 08:30"),
  out: moment("out", "2026-03-15 08:00"),
  toOven: moment("to oven", "2026-03-15 09:22"),
  bake: quantity("minutes", "bake minutes", 42),
  done: moment("done", "2026-03-15 10:04"),
};

const lineOf = (plan: Plan, load: Planned, number: number, readyBy: number | undefined) => {
  const at = (seconds: number) => momentOf(plan, seconds) as Quantity<"date"> | string;
  return {
    load: number as string | number,
    pieces: contentOf(load),
    color: load.colorName,
    count: as<Quantity<"count">>(load.count),
    solids: as<Quantity<"volume">>(load.solids),
    pour: as<Quantity<"fluid">>(load.pour),
    add: as<Quantity<"fluid">>(load.add),
    uptake: as<Quantity<"fluid">>(load.uptake),
    mixed: as<Quantity<"fluid">>(load.mixed),
    packets: as<Quantity<"count">>(load.packets),
    dye: load.dye as Quantity<"powder"> | Trouble,
    useBy: useByOf(plan, load) as Quantity<"date"> | string | Trouble,
    in: at(load.in),
    out: at(load.out),
    toOven: at(load.starts[0]),
    bake: as<Quantity<"minutes">>(Math.max(...load.batches)),
    done: lateBy(plan, load, readyBy) ?? at(load.done),
  };
};

/** A row that cannot be planned: its label, and why in every other cell. */
const faulty = (label: string, trouble: Trouble) => ({
  ...(Object.fromEntries(Object.keys(columns).map((name) => [name, trouble])) as Record<keyof typeof columns, Trouble>),
  load: label as string | number,
});

export const plan = define({
  name: "PLAN",
  per: "call",
  asks: "When do I soak and bake each load?",
  args: planArgs,
  shop: planShop,
  returns: table(columns),
  format: {
    load: "0",
    pieces: "General",
    color: "General",
    count: "0",
    solids: "0.0",
    pour: "0.00",
    add: "0.00",
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
    "a load is one color, any sizes, packed in layers with {gap} between pieces, stack + {cover} ≤ tub height × (1 − {foamRoom}); to pour + to add = area × (stack + {leastCover}) − solids + taken up, or more while there is enough; to mix = what is missing on hand, up to whole packets of {packetMakes}; in = first moment with {loadingMinutes} a load before it and {vacuumHours} after it between {opens} and {closes}; out = first moment after {soakHours} more from which taking out, wrapping ({wrapMinutesPerPiece} a piece) and all batches fit into the day",
  source:
    "the shop's own rules: common practice, no source; packing as ARRANGE, uptake as UPTAKE, dye as DYETOPUP, bake as BAKE, use by as EXPIRY; tubs in a round chamber by the known radii for 1 to 7 circles in a circle",
  accuracy:
    "for one person, one chamber and one oven. Not in it: a second pair of hands, warming up the oven and opening its door, the height of a shelf, draining, cooling, weighing, and resin lost as vapor. What the wood takes up is a guess until you have weighed some, from about half to half as much again: have resin ready to add. In a plan without dates day 1 is a Monday, or the first day after it that is not off",
  cautions: ["chamber", "ballast", "resin", "storage", "oven"],
  worked: {
    typed: [[["maple", 12, 0.75, 0.75, 5, 0.45]], 6, 10, "2026-03-14 08:00"],
    gives: [
      Object.values(columns).map(({ label }) => label),
      [
        1,
        "12 maple",
        "",
        12,
        38.0553519,
        1.29942829,
        0.0033874505,
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
    const made = planOf(given);
    const mixed = made.loads.reduce((sum, load) => sum + load.mixed, 0);
    const steps: Record<string, Said | string> = {
      loads: said("count", made.loads.length),
      pulls: said("count", made.pulls),
      "pieces planned": said(
        "count",
        made.loads.reduce((sum, load) => sum + load.count, 0),
      ),
      "rows not planned": said("count", made.unplanned.length),
      days: said("count", made.days),
      "resin to mix": said("fluid", mixed),
      "resin left": said(
        "fluid",
        made.colors.reduce((sum, { left }) => sum + left, 0),
      ),
      ...endsOf(given, made),
    };
    if (made.unused > 0)
      steps["resin on hand"] =
        "not used: there are several colors, and its color is not given. List it under resins, one row for each color";
    return steps;
  },
  run: (given) => {
    const made = planOf(given);
    const late = given.start === undefined ? undefined : given.readyBy;
    return [
      ...made.loads.map((load, i) => lineOf(made, load, i + 1, late)),
      ...made.unplanned.map(({ label, trouble }) => faulty(label, trouble)),
    ];
  },
});

import { inPractice, ownHeat, practice } from "../cure/ovenwords";
import { minute } from "./hours";
import type { Run, Step } from "./schema";
import { mixingOf, resinFact } from "./stock";
import { inFraction } from "./tapeinches";
import { lengthOf } from "./timeline";

/** A number that a person writes down at a step. */
export interface Field {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  /** What is expected, to compare with. */
  readonly expected?: number;
}

/** What is to be done at a step, the number first, and what to write down. */
export interface Lines {
  readonly say: readonly string[];
  readonly fields: readonly Field[];
}

export const unitsOf = ({ system, facts }: Run) => ({
  fluid: system === "US" ? "qt" : "L",
  powder: system === "US" ? "tsp" : "mL",
  length: system === "US" ? "in" : "mm",
  pressure: system === "US" ? "inHg" : "kPa",
  degrees: system === "US" ? "°F" : "°C",
  weight: String(facts["scale reads"] ?? (system === "US" ? "oz" : "g")),
});

/** Rounded to two significant figures, as an estimate deserves; three where a scale or a gauge shows as many. */
export const rough = (value: number, figures = 2): string =>
  value === 0 ? "0" : String(Number(value.toPrecision(value >= 100 ? 3 : figures)));

const fact = ({ facts }: Run, name: string): number | undefined => {
  const value = facts[name];
  return typeof value === "number" ? value : undefined;
};

export function piecesIn({ loads, system }: Run, load: number): string {
  const said = loads[load - 1].pieces.map(({ name, wood, count, thickness, width, length }) => {
    const sizes = [thickness, width, length].map((side) => (system === "US" ? inFraction(side) : rough(side, 4))).join(" × ");
    return `${count} ${name || wood}, ${sizes} ${system === "US" ? "in" : "mm"}`;
  });
  return said.join("; ");
}

/** A line for each load of a step, with the load's number where the run has several. */
function each(run: Run, loads: readonly number[], of: (load: number) => string): string[] {
  return loads.flatMap((load) => {
    const words = of(load);
    if (!words) return [];
    return run.loads.length > 1 ? [`Load ${load}: ${words.charAt(0).toLowerCase()}${words.slice(1)}`] : [words];
  });
}

function fields(
  run: Run,
  loads: readonly number[],
  name: string,
  label: string,
  unit: string,
  expected?: (load: number) => number | undefined,
): Field[] {
  return loads.map((load) => ({
    name: `${name} ${load}`,
    label: run.loads.length > 1 ? `Load ${load}: ${label.charAt(0).toLowerCase()}${label.slice(1)}` : label,
    unit,
    expected: expected?.(load),
  }));
}

/** "About 46 min in the oven, likely 33 to 80." */
function bakeWords(run: Run, load: number): string {
  const whole = (name: string) => {
    const value = fact(run, `${name} ${load}`);
    return value === undefined ? undefined : Math.round(value);
  };
  const [bake, least, most] = [whole("bake"), whole("bake least"), whole("bake most")];
  if (!bake) return "";
  if (least === undefined) return `About ${bake} min in the oven.`;
  const end = most === undefined || run.facts[`bake open ${load}`] !== undefined ? "or more" : `to ${most}`;
  return `About ${bake} min in the oven, likely ${least} ${end}.`;
}

export function linesOf(run: Run, step: Step, now: number): Lines {
  const units = unitsOf(run);
  const all = run.loads.map((_, i) => i + 1);
  const { loads, kind } = step;
  const told = (name: string, words: (value: number) => string) => {
    const value = fact(run, name);
    return value === undefined ? "" : words(value);
  };
  const lines = (say: readonly string[], own: readonly Field[] = []): Lines => ({ say: say.filter(Boolean), fields: own });
  const minutes = Math.round(lengthOf(run, step) / minute);
  switch (kind) {
    case "choose":
      return lines(
        each(run, all, (load) => piecesIn(run, load)),
        fields(run, all, "before", "All pieces together, oven-dry", units.weight, (load) => fact(run, `dry ${load}`)),
      );
    case "safety":
      return lines(["Go through the safety list. It is kept with this workbook."]);
    case "mix": {
      const { onHand, mix, packets, dye, spoons, isFresh } = mixingOf(run, now);
      const dyed = dye ? (spoons ?? `${rough(dye)} ${units.powder}`) : "none to add";
      return lines(
        [
          mix ? `Mix ${rough(mix, 3)} ${units.fluid} of ${isFresh ? "fresh resin" : "resin"}.` : "",
          mix === 0 ? "Nothing to mix: what is on hand is enough." : "",
          packets ? `${packets} ${packets === 1 ? "packet" : "packets"} of catalyst, as the label says.` : "",
          onHand ? `The ${rough(onHand)} ${units.fluid} on hand goes in first.` : "",
          run.color === "clear" ? "No dye: it stays clear." : dye === undefined ? "" : `Dye${run.color ? `, ${run.color}` : ""}: ${dyed}.`,
        ],
        [
          { name: "mixed", label: "Mixed", unit: units.fluid, expected: mix },
          { name: "dyed", label: "Dye put in", unit: units.powder, expected: run.color === "clear" ? 0 : dye },
        ],
      );
    }
    case "load":
      return lines(
        each(run, loads, (load) => {
          const way = run.facts[`way ${load}`];
          const layers = fact(run, `layers ${load}`);
          const stack = typeof way === "string" ? `Pieces ${way}, ${layers} ${layers === 1 ? "layer" : "layers"}. ` : "";
          const ballast = told(`ballast ${load}`, (held) =>
            held ? `At least ${rough(held)} ${units.weight} of steel on top. ` : "They sink by themselves. ",
          );
          const pour = resinFact(run, `pour ${load}`, now);
          return `${stack}${ballast}${pour === undefined ? "" : `Pour ${rough(pour)} ${units.fluid}.`}`;
        }),
        fields(run, loads, "poured", "Poured", units.fluid, (load) => resinFact(run, `pour ${load}`, now)),
      );
    case "vacuum":
      return lines([
        told("gauge at least", (gauge) => `Gauge at least ${rough(gauge, 3)} ${units.pressure}.`),
        `Stop when the bubbles stop, usually after ${rough(minutes / 60)} h.`,
      ]);
    case "air":
      return lines(
        each(run, loads, (load) => {
          const add = resinFact(run, `add ${load}`, now) ?? 0;
          return add > 0
            ? `Let the air in. Then add ${rough(add)} ${units.fluid}: the wood takes up resin now.`
            : "Let the air in. Keep the pieces covered: the wood takes up resin now.";
        }),
        fields(run, loads, "added", "Added", units.fluid, (load) => resinFact(run, `add ${load}`, now)),
      );
    case "soak":
      return lines([`At least ${rough(minutes / 60)} h, twice as long as the vacuum. Longer does no harm.`]);
    case "drain":
      return lines(
        [
          `Let them drip off, then weigh each load.${run.facts["in the oven"] === "foil" ? " Wrap each piece in foil." : " Stand them apart, bare."}`,
        ],
        fields(run, loads, "drained", "All pieces together, drained", units.weight),
      );
    case "bake": {
      const bakes = loads.map((load) => fact(run, `bake ${load}`) ?? 0);
      const rise = Math.max(0, ...loads.map((load) => fact(run, `rise ${load}`) ?? 0));
      return lines([
        ...each(run, loads, (load) => bakeWords(run, load)),
        loads.length > 1 && minutes ? `${minutes} min in all, one load after the other.` : "",
        told(
          "oven",
          (oven) =>
            `Oven at ${rough(oven, 3)} ${units.degrees}, until the core reaches ${rough(fact(run, "core") ?? 0, 3)} ${units.degrees}.`,
        ),
        Math.max(0, ...bakes) * minute > practice * 1000 ? inPractice : "",
        rise ? `The resin heats itself, by up to ${rough(rise)} ${units.degrees} if none of its heat got out: ${ownHeat}.` : "",
      ]);
    }
    case "cool":
      return lines([minutes ? `About ${minutes} min, apart, in still air.` : "Until they feel as cold as the room."]);
    case "weigh":
      return lines(
        ["Weigh each load, cured and cool."],
        [...fields(run, loads, "cured", "All pieces together, cured", units.weight), ...fields(run, loads, "spoiled", "Spoiled", "pieces")],
      );
    default:
      return lines(["Write the run down, then set your price on the sheet Price Tag."]);
  }
}

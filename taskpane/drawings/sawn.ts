import { svg } from "lit";
import { said, sayIn } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import { temperatureAt } from "../../src/cure/heating";
import { shareAt, temperatures, type Warming } from "./baking";
import { type Drawing, paper, px } from "./drawing";

const cells = 16;
/** Shades from cold to hot. */
const shades = 6;

/** The temperature over one quarter of the cut, the middle first: rows up, columns across. */
function quarter(warming: Warming): number[][] {
  const { slabs, sawn, bath, first } = warming;
  const [up, across, along] = slabs;
  const middle = along ? shareAt(along, sawn, 0) : 1;
  const at = Array.from({ length: cells }, (_, i) => (i + 0.5) / cells);
  const columns = at.map((x) => shareAt(across, sawn, x));
  return at.map((y) => {
    const share = shareAt(up, sawn, y) * middle;
    return columns.map((column) => temperatureAt(bath, first, share * column));
  });
}

interface Run {
  readonly from: number;
  readonly many: number;
  readonly shade: number;
}

/** Merges neighbors of one shade, so that a picture has some dozen shapes rather than a thousand. */
function runs(row: readonly number[]): Run[] {
  const all: Run[] = [];
  row.forEach((shade, i) => {
    const last = all.at(-1);
    if (last?.shade === shade) all[all.length - 1] = { ...last, many: last.many + 1 };
    else all.push({ from: i, many: 1, shade });
  });
  return all;
}

/** Cross-section of the blank through its middle, at one moment. */
export function sawnDrawing(warming: Warming, units: Units): Drawing {
  const { sides, sawn, bath, first, cooling } = warming;
  const { thickness, width = thickness } = sides;
  const scale = Math.min((paper - 60) / width, 150 / thickness);
  const wide = width * scale;
  const tall = thickness * scale;
  const left = (paper - wide) / 2;
  const { core, skin } = temperatures(warming, sawn);
  const least = Math.min(core, skin);
  const most = Math.max(core, skin, ...quarter(warming).map((row) => row[cells - 1]));
  const shadeOf = (celsius: number) =>
    most - least < 0.5 ? shades - 1 : Math.min(shades - 1, Math.max(0, Math.floor(((celsius - least) / (most - least)) * shades)));
  const half = quarter(warming).map((row) => row.map(shadeOf));
  const full = [...[...half].reverse(), ...half].map((row) => [...[...row].reverse(), ...row]);
  const dx = wide / (2 * cells);
  const dy = tall / (2 * cells);
  const say = (celsius: number) => sayIn(units, said("temperature", celsius));
  const moment = sayIn(units, said("minutes", sawn));
  return {
    title: `The blank sawn across after ${moment}`,
    width: paper,
    height: tall + 8,
    picture: svg`${full.flatMap((row, j) =>
      runs(row).map(
        ({ from, many, shade }) =>
          svg`<rect class=${`heat heat-${shade}`} x=${px(left + from * dx)} y=${px(4 + j * dy)} width=${px(many * dx + 0.5)} height=${px(dy + 0.5)} />`,
      ),
    )}<rect class="cut" x=${px(left)} y="4" width=${px(wide)} height=${px(tall)} />`,
    says: `${sayIn(units, said("length", width))} by ${sayIn(units, said("length", thickness))}; in the middle ${say(core)}, on the widest face ${say(skin)}; ${cooling ? "the room" : "the oven"} has ${say(bath)}, it started at ${say(first)}`,
    legend: [
      [cooling ? `heat-${shades - 1}` : "heat-0", `middle: ${say(core)}`],
      [cooling ? "heat-0" : `heat-${shades - 2}`, `widest face: ${say(skin)}`],
    ],
  };
}

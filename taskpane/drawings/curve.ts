import { svg } from "lit";
import { said, sayIn } from "../../shared/outcome";
import { fromInternal, toInternal, type Units } from "../../shared/unit";
import { temperatures, type Warming } from "./baking";
import { type Drawing, lineThrough, paper, px, ticks } from "./drawing";

const left = 34;
const right = 8;
const top = 18;
const bottom = 34;
const height = 194;
const points = 60;

/** Surface and core over time, with the temperature that the core is to reach. */
export function curveDrawing(warming: Warming, units: Units): Drawing {
  const { until, first, bath, target, cooling } = warming;
  const least = Math.min(first, bath);
  const most = Math.max(first, bath);
  const x = (seconds: number) => left + (seconds / until) * (paper - left - right);
  const y = (celsius: number) => top + ((most - celsius) / (most - least)) * (height - top - bottom);
  const say = (celsius: number) => sayIn(units, said("temperature", celsius));
  const moments = Array.from({ length: points + 1 }, (_, i) => (until * i) / points);
  const readings = moments.map((at) => ({ at, ...temperatures(warming, at) }));
  const curve = (of: "core" | "skin") => lineThrough(readings.map((one) => [x(one.at), y(one[of])]));

  const unit = units.temperature;
  const grid = ticks(fromInternal(least, unit), fromInternal(most, unit), 5).map((value) => {
    const at = px(y(toInternal(value, unit)));
    return svg`<line class="grid" x1=${left} x2=${paper - right} y1=${at} y2=${at} /><text class="end" x=${left - 4} y=${at} dy="0.32em">${value}</text>`;
  });
  const times = ticks(0, until / 60, 5).map((minute) => {
    const at = px(x(minute * 60));
    return svg`<text class="middle" x=${at} y=${height - bottom + 14}>${minute}</text><line class="grid" x1=${at} x2=${at} y1=${height - bottom} y2=${height - bottom + 3} />`;
  });
  const aim = target === undefined ? "" : svg`<line class="aim" x1=${left} x2=${paper - right} y1=${px(y(target))} y2=${px(y(target))} />`;
  const end = readings.at(-1)!;
  return {
    title: cooling ? "How surface and core cool down" : "How surface and core warm up",
    width: paper,
    height,
    picture: svg`<text x="0" y="10">${unit.name}</text><text class="end" x=${paper - right} y=${height - 4}>minutes</text>${grid}${times}${aim}<path class="skin" d=${curve("skin")} /><path class="core" d=${curve("core")} />`,
    says: `minutes across, ${unit.name} up; after ${sayIn(units, said("minutes", until))} the surface is at ${say(end.skin)} and the core ${say(end.core)}`,
    legend: [
      ["skin", `surface, middle of the widest face: ${say(end.skin)} at the end`],
      ["core", `core: ${say(end.core)} at the end`],
      ...(target === undefined
        ? []
        : ([["aim", cooling ? `cool enough: ${say(target)}` : `what the core must reach: ${say(target)}`]] as const)),
    ],
  };
}

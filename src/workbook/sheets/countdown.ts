import { bake } from "../../cure/bake";
import { cooldown } from "../../cure/cooldown";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { type Page, verdict } from "../page";
import { type Ref, refTo } from "../place";
import { earlier, endBy, eveningBefore, type Hours, later, spreadBack } from "./backward";
import { moment, weekday } from "./day";
import { wayWords } from "./ovenway";
import type { Shown } from "./piece";
import type { Shop } from "./shop";

/** What the rest of the sheet needs of the times. */
export interface Countdown extends Hours {
  readonly bake: Ref;
  readonly cool: Ref;
  readonly vacuum: Ref;
  readonly soak: Ref;
  readonly loading: Ref;
  /** Loading and vacuum together. */
  readonly intake: Ref;
  /** Getting ready, baking and cooling of one load. */
  readonly oven: Ref;
}

/** Counts back from the hour of the demo: one load to cut open, one ready for the oven, one dry for the bubbling. */
export function countdown(page: Page, kit: Kit, shop: Shop, shown: Shown): Countdown {
  const lengths = hoursOf(page, kit, shop, shown);
  page.skip();
  page.put(page.row, 5, { value: "latest start of the soak", look: "note" });
  page.heading("Backward from that hour", "from", "until", "what comes of it", "done");
  const name = page.sheet.name;
  const top = page.row;
  const from = (step: number) => refTo(name, top + step, 1);
  const until = (step: number) => refTo(name, top + step, 2);
  const { opens, closes, loading, intake, soak, drying, oven } = lengths;
  const open = { opens, closes };
  const steps: [what: string, from: Formula, until: Formula, note: string][] = [
    [
      "dry all three loads in the oven",
      spreadBack(until(0), drying, open),
      eveningBefore(from(2), open),
      "only while somebody is there; weigh until the weight stands still",
    ],
    ["cool, weigh, bag", formula`${until(0)}`, formula`${from(2)}`, "warm pieces never go near the resin"],
    ["load 1: in, vacuum", earlier(until(2), intake), endBy(earliest(page, top, 3), intake, open), "stay with it"],
    ["load 1: soak, air let in", formula`${until(2)}`, formula`${from(4)}`, "at least the soak hours of My Shop"],
    ["load 1: take out, drain", earlier(until(4), loading), endBy(from(5), loading, open), ""],
    ["load 1: get ready, bake, cool", earlier(until(5), oven), endBy(from(6), oven, open), "to cut open in front of the audience"],
    ["load 2: in, vacuum", earlier(until(6), intake), endBy(earliest(page, top, 7), intake, open), "stay with it"],
    ["load 2: soak, air let in", formula`${until(6)}`, formula`${from(8)}`, "at least the soak hours of My Shop"],
    ["load 2: take out, drain", earlier(until(8), loading), endBy(shown.start, loading, open), "ready for the oven at the demo"],
    [
      "the demo",
      formula`IF(${shown.start}="","",${shown.start})`,
      later(shown.start, intake),
      "load 3 in and under vacuum to show the bubbling, load 2 into the oven, load 1 cut open",
    ],
  ];
  steps.forEach(([what, begin, end, note], step) => {
    page.put(top + step, 0, { value: what, look: "label" });
    page.put(top + step, 1, { formula: begin, format: weekday, look: "result" });
    page.put(top + step, 2, { formula: end, format: weekday, look: "result" });
    page.put(top + step, 3, { value: note, look: "note" });
    page.put(top + step, 4, { look: "tick" });
  });
  // A soak ends when its load is taken out, and began the soak hours earlier at the latest.
  for (const step of [3, 7]) page.put(top + step, 5, { formula: earlier(from(step + 1), soak), format: moment, look: "note" });
  page.row = top + steps.length;
  const longest = formula`MAX(${intake},${oven},${loading})>${closes}-${opens}`;
  const hour = formula`MOD(${shown.start},1)*24`;
  const outside = formula`OR(${hour}<${opens}-0.000001,${hour}+${intake}>${closes}+0.000001)`;
  const kept = page.say(
    formula`IF(COUNT(${intake},${shown.start})<2,"",IF(${outside},"Loading and vacuum of load 3 run outside the hours of My Shop, and vacuum is never left alone: move the demo or the hours.",IF(COUNT(${oven})=0,"",IF(${longest},"A step is longer than the hours in which somebody is there: this cannot be kept.","Every step that needs somebody lies within the hours of My Shop; only soaking goes on by itself."))))`,
  );
  page.alert("bad", kept, formula`AND(LEN(${kept})>0,LEFT(${kept},5)<>"Every")`);
  page.skip();
  return lengths;
}

/** The latest end of the vacuum that leaves its soak time: kept beside the soak. */
const earliest = (page: Page, top: number, step: number): Ref => refTo(page.sheet.name, top + step, 5);

function hoursOf(page: Page, kit: Kit, shop: Shop, shown: Shown) {
  page.heading("How long things take", "", "", "");
  const clock = (setting: string, label: string) => {
    const holds = shop.holds(setting);
    return page.line({
      label,
      formula: formula`IF(${holds}<1,${holds}*24,${holds})`,
      unit: "o'clock",
      format: "General",
      note: "My Shop; vacuum and oven are never left alone",
    });
  };
  const opens = clock("opens", "somebody is there from");
  const closes = clock("closes", "until");
  const drying = page.line({
    label: "drying in the oven",
    value: kit.demo ? 20 : undefined,
    input: { from: 0, to: 1000 },
    unit: "h",
    note: "until constant; about a day for blanks (common practice, no source)",
  });
  const loading = page.line({
    label: "loading, and again taking out",
    formula: formula`${shop.holds("loading minutes")}/60`,
    unit: "h",
    format: "0.00",
    note: "My Shop",
  });
  const vacuum = page.line({
    label: "vacuum",
    formula: formula`${shop.holds("vacuum hours")}`,
    unit: "h",
    format: "0.0",
    note: "My Shop; until the bubbling stops",
  });
  const intake = page.line({ label: "loading and vacuum", formula: formula`${loading}+${vacuum}`, unit: "h", format: "0.0" });
  const soak = page.line({
    label: "soak",
    formula: formula`${shop.holds("soak hours")}`,
    unit: "h",
    format: "0.0",
    note: formula`IF(${page.next}<2*${vacuum}-0.000001,"less than twice the vacuum: the wood takes less than reckoned","My Shop; at least twice the vacuum")`,
  });
  page.alert("attention", soak, formula`IF(COUNT(${soak},${vacuum})=2,${soak}<2*${vacuum}-0.000001,FALSE)`);
  const { thickness, width, length, gravity } = shown;
  const piece = { thickness, width, length, gravity };
  const baked = page.line({
    label: "bake",
    formula: ask(bake, piece),
    unit: "min",
    format: "0",
    note: formula`IF(ISNUMBER(${page.next}),IFERROR(${shown.bake}&"; ","")&"the resin heats itself, the label decides",${verdict(page.next, "", "no calculation bakes this piece: follow the maker's schedule")})`,
  });
  const cool = page.line({
    label: "cool before weighing",
    formula: ask(cooldown, piece),
    unit: "min",
    format: "0",
    note: verdict(page.next, "bare, apart, in still air", "no calculation cools this piece: wait until it feels as cold as the room"),
  });
  const oven = page.line({
    label: "get ready, bake and cool one load",
    formula: formula`IF(COUNT(${baked},${cool},${shown.count})=3,(${shop.holds("wrap minutes per piece")}*${shown.count}+${baked}+${cool})/60,"")`,
    unit: "h",
    format: "0.0",
    note: wayWords(shop),
  });
  return { opens, closes, drying, loading, vacuum, intake, soak, bake: baked, cool, oven };
}

import { ballast } from "../../chamber/ballast";
import { type KindName, kindNames, kindOf } from "../../run/stepkinds";
import { airOut } from "../../vacuum/airout";
import { fullVacuum } from "../../vacuum/fullvacuum";
import { waterBoils } from "../../vacuum/waterboils";
import { ask, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";
import { moment } from "./day";
import { wayWords } from "./ovenway";
import type { Shop } from "./shop";
import { across, type Each, each, oneLine, threeLine } from "./three";
import { bakeLines } from "./todaybake";
import { hoursKept } from "./todayhours";
import { mixLines } from "./todaymix";
import type { LoadOf } from "./todaypieces";
import { startLine } from "./todaystart";
import { ahead, type Begins, before, type countBack, type Lengths, type Times, timeFormulas } from "./todaytimes";
import { weighLines } from "./todayweigh";

interface Work {
  readonly begins: Begins;
  readonly asOf: Ref;
  readonly loads: Each<LoadOf>;
  readonly counts: Each<Ref>;
}

/** The steps in the order of the work, each with its time first. `fill` puts the times in once the durations below are placed. */
export function workLines(page: Page, kit: Kit, shop: Shop, { begins, asOf, loads, counts }: Work) {
  const { at, isDemo } = begins;
  const fluid = kit.unit("fluid");
  const one = { first: formula`IF(ISNUMBER(${at}),IF(${isDemo},${at}-${ahead}/1440,${at}),"")` };
  const number = (kind: KindName) => kindNames.indexOf(kind) + 1;

  /** A heading, the time it begins, and what is wrong with that. */
  const step = (kind: KindName): void => {
    page.skip();
    page.heading(`${number(kind)}. ${kindOf(kind).title}`, "load 1", "load 2", "load 3", "", "", "");
    page.say(kindOf(kind).caution, "caution");
  };
  const passed = (from: Formula): Formula => formula`IF(COUNT(${asOf},${at})=2,IF(ISNUMBER(${from}),${from}<${asOf},FALSE),FALSE)`;
  const times = (label: string, good: string) => startLine(page, asOf, label, good);
  const onceAt = (label: string, minutes: number): Ref =>
    oneLine(page, label, formula`IF(ISNUMBER(${one.first}),${one.first}+${minutes}/1440,"")`, {
      format: moment,
      good: formula`IF(${passed(formula`IF(ISNUMBER(${one.first}),${one.first}+${minutes}/1440,"")`)},"this start has passed: begin at once, or move the run","")`,
    });

  // 1. Choose and weigh: its heading stands already.
  onceAt("from", 0);
  const volume = threeLine(page, "wood in the load", (load) => loads[load].volume, {
    unit: kit.unit("volume"),
    format: kit.by("0.0", "0"),
  });
  const weight = threeLine(page, "oven-dry weight", (load) => loads[load].weight, {
    unit: "g",
    format: "0",
    good: "expected; weigh them and write it under Weigh below",
    bad: "a size or the kind of wood is missing: see the problems above",
  });
  step("safety");
  onceAt("from", before.choose);
  page.say("Check off the safety list on the sheet Safety or in the side pane.");

  step("mix");
  onceAt("from", before.choose + before.safety);
  const mixTop = page.row;
  page.row = mixTop + 9;

  step("load");
  const loadFrom = times("from", "the last load goes in when the demo begins");
  const pour = threeLine(page, "resin to pour", (load) => loads[load].planned("to pour")!, {
    unit: fluid,
    format: "0.00",
    good: "covers the pieces, with room for the foam",
    bad: "does not fit like this: see the problems above, and check the chamber and its height",
  });
  threeLine(
    page,
    "ballast, steel",
    (load) => given([volume[load], weight[load]], ask(ballast, { solids: volume[load], weight: weight[load] })),
    {
      unit: "g",
      format: "0",
      good: "stainless steel or glass, so that nothing floats",
      bad: "heavier than any wood: check weight and sizes",
    },
  );
  const fits = each((load) => refTo(page.sheet.name, page.row, 1 + load));
  threeLine(
    page,
    "fits into one load",
    (load) =>
      formula`IF(${counts[load]}="","",IF(ISNUMBER(${pour[load]}),IF(${loads[load].planned("count")!}<${counts[load]},"no","yes"),"no"))`,
    { look: "words", good: formula`IF(COUNTIF(${across(fits)},"no")>0,"take pieces out, or put some into another load","")` },
  );
  page.alert("bad", across(fits), formula`${fits[0]}="no"`);

  step("vacuum");
  const vacuumFrom = times("from", "stay with it; write the minutes down under Weigh");
  const full = oneLine(page, "deepest gauge reading here", ask(fullVacuum, {}), {
    unit: kit.unit("pressure"),
    format: "0.0",
    good: "at this altitude and with this pump",
    bad: "check altitude and barometer on My Shop",
  });
  const { isRefused } = shop;
  const gauge = oneLine(page, "gauge to go to", formula`IF(${isRefused},"",IF(ISNUMBER(${full}),0.97*${full},""))`, {
    unit: kit.unit("pressure"),
    format: "0.0",
    good: formula`IF(${isRefused},"no vacuum: see the lid check on My Shop","97 % of it; stop when the bubbles stop")`,
  });
  oneLine(page, "air out of the pores by then", given([gauge], ask(airOut, { gauge })), {
    format: "0%",
    good: "at most: closed pores keep theirs",
    bad: "the gauge is deeper than the air pressure",
  });
  oneLine(page, "water boils at", given([gauge], ask(waterBoils, { gauge })), {
    unit: kit.unit("temperature"),
    format: "0",
    good: "so may the resin: bubbles alone prove nothing",
    bad: "at any temperature above freezing",
  });

  step("air");
  const airFrom = times("from", "when the bubbles have stopped");
  const adds = loads[0].planned("to add");
  const add = adds
    ? threeLine(page, "resin to add", (load) => loads[load].planned("to add")!, {
        unit: fluid,
        format: "0.00",
        good: "once the air is in: have it ready",
        bad: "see the load",
      })
    : undefined;

  step("soak");
  const soakUntil = times("until, at least", "longer does no harm");

  step("drain");
  const drainFrom = times("from", "drip off, weigh, then get ready for the oven");
  oneLine(page, "get ready", wayWords(shop), { look: "words" });

  step("bake");
  const bakeFrom = times("from", "never leave the oven alone");
  const bakeTop = page.row;
  page.row += 4;

  step("cool");
  const coolFrom = times("from", "apart, in still air");
  const done = times("cool by", "then weigh");

  step("weigh");
  weighLines(page, kit, volume, loads);

  step("price");
  page.say("Write the run down in the side pane under Run, or copy it by hand: Run Log, Resin Book, then Price Tag.");
  const after = page.row;

  page.row = mixTop;
  const uptakes = each((load) => loads[load].planned("taken up")!);
  const mixing = mixLines(page, kit, shop, begins, { pour, add, uptakes }, done.refs);
  page.row = after;

  const places: Times = {
    load: loadFrom.refs,
    air: airFrom.refs,
    drain: drainFrom.refs,
    bake: bakeFrom.refs,
    cool: coolFrom.refs,
    done: done.refs,
  };
  return {
    times: places,
    mix: mixing,
    fill(lengths: Lengths, back: ReturnType<typeof countBack>): void {
      const made = timeFormulas(begins, lengths, back, places);
      loadFrom.put(made.load);
      vacuumFrom.put((load) => given([loadFrom.refs[load], lengths.loading], formula`${loadFrom.refs[load]}+${lengths.loading}/24`));
      airFrom.put(made.air);
      soakUntil.put((load) => given([airFrom.refs[load], lengths.soak], formula`${airFrom.refs[load]}+${lengths.soak}/24`));
      drainFrom.put(made.drain);
      bakeFrom.put(made.bake);
      coolFrom.put(made.cool);
      done.put(made.done);
      const below = page.row;
      page.row = bakeTop;
      bakeLines(page, kit, loads, counts, lengths);
      page.row = below;
      hoursKept(page, begins, lengths, places);
    },
  };
}

import { cautionsOf } from "../../cautions";
import { kindOf } from "../../run/stepkinds";
import { formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { type Ref, refTo } from "../place";
import { momentExample } from "../usdates";
import { shopIsWrong } from "../verdict";
import type { Blanks } from "./blanks";
import { curve } from "./curve";
import { demoStart, moment } from "./day";
import type { Shop } from "./shop";
import { across, oneLine, threeLine } from "./three";
import { type LoadOf, loadTables } from "./todaypieces";
import { timeline } from "./todaytimeline";
import { type Begins, countBack, lengthLines } from "./todaytimes";
import { workLines } from "./todaywork";

export interface Today {
  readonly page: Page;
  readonly start: Ref;
  /** What the run view begins with: the pieces of each load, and the color. */
  readonly loads: readonly Ref[];
  readonly color: Ref;
  readonly chamber: Ref;
  readonly height: Ref;
}

/** Columns in sight, and on paper. */
const shown = 7;

const demoWords = "the demo begins at";
const startWords = "the run starts at";

/** One real run, in the order of the work: up to three loads side by side. */
export function todaySheet(kit: Kit, shop: Shop, blanks: Blanks): Today {
  const page = new Page(
    "Today",
    "One run, from choosing the wood to the price. Pick up to three loads and say when: every step below gets its time and its numbers.",
    [29, 19, 19, 19, 9, 9, 42, 3, 3, ...Array<number>(11).fill(10)],
    { landscape: true, columns: shown },
  );
  page.sheet.hidden = shown;
  page.open("Today");
  const answer = refTo(page.sheet.name, page.row, 0);
  page.skip(3);
  page.heading("When, where, what color");
  const how = inputLine(
    page,
    "this run:",
    kit.demo ? demoWords : startWords,
    { list: [demoWords, startWords], only: true },
    "the last load goes in when the demo begins; or the run starts at once",
  );
  const pictureAt = { row: page.row - 1, column: 2, rows: 7, columns: 4 };
  const isDemo = formula`${how}="${demoWords}"`;
  const start = inputLine(
    page,
    "day and hour",
    kit.demo ? demoStart : undefined,
    { date: true },
    `day and hour, such as ${momentExample(kit.system)}; type =NOW() to start now`,
    moment,
  );
  page.put(start.row, 6, {
    formula: formula`IF(ISTEXT(${start}),"no date: type a day and hour, such as ${momentExample(kit.system)}",IF(${start}="","type a day and hour, such as ${momentExample(kit.system)}, or =NOW() to start now",""))`,
    look: "note",
  });
  page.alert("bad", start, formula`ISTEXT(${start})`);
  const asOf = inputLine(
    page,
    "it is now",
    undefined,
    { date: true },
    "optional: type =NOW(), and a step whose start has passed says so",
    moment,
  );
  const chamber = ownLine(page, `chamber or tub, inside, ${kit.unit("length")}`, shop.chamber, kit, 4);
  const height = ownLine(page, `height inside, ${kit.unit("length")}`, shop.height, kit, 10);
  const color = inputLine(page, "color", undefined, true, "");
  page.skip();
  const loads = loadTables(page, kit, blanks, { chamber, height, shop: shop.withoutTubs });
  colorLine(page, color, loads[2].color);
  page.skip();
  const places = steps(page, kit, shop, blanks, { how, start, asOf, isDemo }, loads, pictureAt);
  curve(page, kit, loads[0].first);
  page.skip();
  page.cautions(cautionsOf(["chamber", "pump", "ballast", "resin", "storage", "wet wood", "oven", "dust"]));
  const { counts, done, mix } = places;
  const problems = loads.map((load) => formula`SUMPRODUCT(LEN(${load.problems}))`);
  const isWrong = formula`${problems[0]}+${problems[1]}+${problems[2]}>0`;
  page.put(answer.row, 0, {
    formula: formula`IF(${shopIsWrong},"No numbers until My Shop is right.",IF(${isWrong},"Some pieces below cannot go in: see “problem” in their row. Their load has no numbers until then.",IF(COUNT(${across(counts)})=0,"Pick pieces for load 1 below.",SUM(${across(counts)})&IF(SUM(${across(counts)})=1," piece, "," pieces, ")&COUNT(${across(counts)})&IF(COUNT(${across(counts)})=1," load"," loads")&IF(ISNUMBER(${mix}),IF(${mix}>0,": mix "&ROUND(${mix},2)&" ${kit.unit("fluid")}",": what is on hand is enough resin"),"")&".")))`,
    look: "strong",
  });
  page.alert("bad", answer, isWrong);
  page.sheet.merges.push(refTo(page.sheet.name, answer.row, 0, 1, 7));
  page.put(answer.row + 1, 0, { value: "done and cool by", look: "label" });
  page.put(answer.row + 1, 1, { formula: formula`IF(COUNT(${across(done)})=0,"",MAX(${across(done)}))`, format: moment, look: "total" });
  return { page, start, loads: loads.map(({ block }) => block), color, chamber, height };
}

type Allowed = NonNullable<Parameters<Page["line"]>[0]["input"]>;

function inputLine(page: Page, label: string, value: string | number | undefined, input: Allowed, note: string, format?: string): Ref {
  const { row } = page;
  const ref = page.line({ label, value, input, format });
  page.put(row, 6, { value: note, look: "note" });
  return ref;
}

/** What My Shop says, unless it is typed over: the demo has a few blanks in a narrow tub. */
function ownLine(page: Page, label: string, from: Ref, kit: Kit, demo: number): Ref {
  const { row } = page;
  page.put(row, 0, { value: label, look: "label" });
  const own = kit.demo ? { value: kit.of("length", demo) } : { formula: formula`IF(${from}="","",${from})` };
  const ref = page.put(row, 1, { ...own, look: "input" });
  page.put(row, 6, {
    formula: formula`IF(${ref}=${from},"from My Shop; type over it for this run","for this run; My Shop has "&${from}&" ${kit.unit("length")}")`,
    look: "note",
  });
  page.row++;
  return ref;
}

/** What Blanks has for the pieces, unless it is typed over. */
function colorLine(page: Page, at: Ref, known: Ref): void {
  const found = formula`MID(${known},2,60)`;
  page.put(at.row, at.column, { formula: formula`IF(LEN(${known})>1,${found},"")`, look: "input" });
  page.put(at.row, 6, {
    formula: formula`IF(LEN(${known})<2,"optional",IF(LOWER(TRIM(${at}))=${found},"from Blanks; type over it for this run","for this run; Blanks has "&${found}))`,
    look: "note",
  });
}

interface When {
  readonly how: Ref;
  readonly start: Ref;
  readonly asOf: Ref;
  readonly isDemo: ReturnType<typeof formula>;
}

/** The counts first; then the work; below it how long things take, and the count back. */
function steps(
  page: Page,
  kit: Kit,
  shop: Shop,
  { ends }: Blanks,
  { start, asOf, isDemo }: When,
  loads: readonly [LoadOf, LoadOf, LoadOf],
  pictureAt: Parameters<typeof timeline>[3],
) {
  page.heading(`1. ${kindOf("choose").title}`, "load 1", "load 2", "load 3", "", "", "");
  const counts = threeLine(page, "pieces", (load) => loads[load].count, { format: "0" });
  const used = oneLine(page, "loads", formula`IF(COUNT(${across(counts)})=0,"",COUNT(${across(counts)}))`, { format: "0" });
  const begins: Begins = { at: start, isDemo, loads: used, counts };
  // The lines of the work speak of times that stand below them.
  const work = workLines(page, kit, shop, { begins, asOf, loads, counts });
  page.skip();
  const lengths = lengthLines(page, shop, loads, counts, ends);
  page.skip();
  const back = countBack(page, begins, lengths);
  page.skip();
  work.fill(lengths, back);
  timeline(page, work.times, lengths, pictureAt);
  page.skip();
  return { counts, done: work.times.done, mix: work.mix };
}

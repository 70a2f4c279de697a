import type { System } from "../../../shared/unittable";
import { places } from "../../checklist/onsheet";
import type { Book } from "../book";
import { type Edition, formula } from "../formula";
import { kitOf, readShop } from "../kit";
import { live } from "../live";
import type { Page } from "../page";
import type { Ref } from "../place";
import { plain } from "../plain";
import { inUs } from "../usdates";
import { shopWarning } from "../verdict";
import { blanksSheet } from "./blanks";
import { handoutSheet } from "./handout";
import { labelsSheet } from "./labels";
import { loadsSheet } from "./loads";
import { priceSheet } from "./pricetag";
import { resinSheet } from "./resinbook";
import { logSheet } from "./runlog";
import { safetySheet } from "./safety";
import { selfCheckSheet } from "./selfcheck";
import { shopSheet } from "./shop";
import { startSheet } from "./start";
import { suppliesSheet } from "./supplies";
import { todaySheet } from "./today";
import { woodsSheet } from "./woods";

export interface Template {
  readonly book: Book;
  /** Formulas that call the functions, under the names they have in files unless told otherwise. */
  readonly live: (name?: (name: string) => string) => Edition;
  readonly plain: Edition;
  /** The line that says whether every worked example agrees. */
  readonly check: Ref;
  readonly paper: "letter" | "a4";
}

/** A table's heading and rows. */
function tableOf({ sheet }: Page, name: string): Ref {
  const found = sheet.tables.find((table) => table.name === name);
  if (!found) throw new Error(`${sheet.name} has no table ${name}`);
  return found.at;
}

/** Days and hours of the US edition, as people there write them. */
function americanDays({ cells }: Page["sheet"]): void {
  for (const [at, cell] of cells) if (cell.format) cells.set(at, { ...cell, format: inUs(cell.format) });
}

/** The workbook as data: its sheets in the order they are read, and the editions it can be written in. */
export function template(system: System, filled: "demo" | "empty"): Template {
  const kit = kitOf(system, filled === "demo");
  const shop = shopSheet(kit);
  const woods = woodsSheet();
  const log = logSheet(kit, shop, woods);
  const blanks = blanksSheet(kit, shop, woods, log);
  const today = todaySheet(kit, shop, blanks);
  const resin = resinSheet(kit, shop, today.start);
  const loads = loadsSheet(kit, shop, blanks, {
    color: today.color,
    volume: shop.holds("resin on hand"),
    mixedOn: shop.typed("resin mixed on"),
    dyeRate: shop.holds("resin dye rate"),
  });
  const price = priceSheet(kit);
  shop.follow(resin.follows);
  const check = selfCheckSheet();
  const supplies = suppliesSheet(kit, loads, today.start);
  const handout = handoutSheet(kit, shop);
  const safety = safetySheet();
  const rest = [
    shop.page,
    blanks.page,
    today.page,
    loads.page,
    price.page,
    resin.page,
    supplies,
    log.page,
    safety.page,
    labelsSheet(kit, shop, blanks, resin),
    handout,
    check.page,
    woods.page,
  ];
  const refused = [
    shop.isRefused,
    formula`"Do not pump, for the lid on My Shop: "&MID(${shop.lid},14,99)&". Use a chamber and lid made and rated for vacuum."`,
  ] as const;
  for (const page of [blanks.page, resin.page, supplies, log.page, price.page]) page.warn(shopWarning);
  for (const page of [today.page, loads.page]) page.warn(shopWarning, refused);
  const pages = [startSheet(kit, rest, { typed: shop.firstTyped, first: shop.first, resin: resin.now, until: resin.until }), ...rest];
  if (system === "US") for (const { sheet } of pages) americanDays(sheet);
  const settingRef = (name: string) => (shop.isOptional(name) ? shop.typed(name) : shop.holds(name));
  return {
    book: {
      title: "Porewise: a run from choosing wood to the price tag",
      sheets: pages.map(({ sheet }) => sheet),
      names: [
        { name: "MyShop", ref: shop.range },
        { name: "Chamber", ref: shop.chamber },
        { name: "ChamberHeight", ref: shop.height },
        { name: "Pieces", ref: blanks.pieces },
        { name: "WoodNames", ref: woods.names },
        { name: "DemoStart", ref: today.start },
        ...today.loads.map((ref, i) => ({ name: `RunLoad${i + 1}`, ref })),
        { name: "RunColor", ref: today.color },
        { name: "RunChamber", ref: today.chamber },
        { name: "RunHeight", ref: today.height },
        { name: "BlankRows", ref: tableOf(blanks.page, "BlanksTable") },
        { name: "BlankFullness", ref: blanks.of.fullness },
        { name: "BlankProblem", ref: blanks.of.wrong },
        { name: "BlankInPlan", ref: blanks.of.inPlan },
        { name: "PumpRate", ref: shop.pumpRate },
        { name: "RunLog", ref: tableOf(log.page, "RunTable") },
        { name: "CostLines", ref: tableOf(price.page, "CostTable") },
        { name: "RunPieces", ref: price.pieces },
        { name: "RunSpoiled", ref: price.spoiled },
        { name: "PlanStart", ref: loads.start },
        { name: "RunTotal", ref: price.total },
        { name: "ResinRuns", ref: resin.runs },
        { name: "ResinNow", ref: resin.now },
        { name: places.run, ref: safety.run },
        { name: places.list, ref: safety.list },
        { name: places.runs, ref: safety.runs },
      ],
    },
    check: check.line,
    live: (name) => live(shop.range, name),
    plain: plain({
      units: kit.units,
      setting: settingRef,
      standard: (setting, of) =>
        readShop([
          ["units", of],
          ["scale reads", "g"],
        ]).get(setting),
    }),
    paper: system === "US" ? "letter" : "a4",
  };
}

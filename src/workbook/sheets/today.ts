import { cautionsOf } from "../../cautions";
import { formula } from "../formula";
import type { Kit } from "../kit";
import { Page, verdict } from "../page";
import { type Ref, refTo, whole } from "../place";
import type { Blanks } from "./blanks";
import { countdown } from "./countdown";
import { curve } from "./curve";
import { demoStart, moment } from "./day";
import { atTheDemo } from "./demorun";
import { reallyHappened } from "./outcomes";
import type { Shown } from "./piece";
import type { Shop } from "./shop";

export interface Today {
  readonly page: Page;
  readonly start: Ref;
}

/** The run sheet of a demo: backward from its hour, then in the order of the work. */
export function todaySheet(kit: Kit, shop: Shop, blanks: Blanks): Today {
  const page = new Page(
    "Today",
    "The run sheet. Give the hour of the demo: the sheet counts back to what must be dried, soaked and baked on which day, and then goes with you through the work.",
    [32, 21, 21, 50, 16, 18],
    { columns: 5 },
  );
  page.open("Today");
  page.sheet.frozen = { rows: 0, columns: 1 };
  const shown = asked(page, kit, blanks);
  page.skip();
  const times = countdown(page, kit, shop, shown);
  curve(page, kit, shown);
  page.skip();
  page.cautions(cautionsOf(["wet wood", "storage", "oven"]));
  page.sheet.breaks.push(page.row - 1);
  page.skip();
  const run = atTheDemo(page, kit, shop, shown, times);
  page.skip();
  page.cautions(cautionsOf(["chamber", "pump", "ballast", "resin", "dust"]));
  page.skip();
  reallyHappened(page, kit, shop, shown, run);
  return { page, start: shown.start };
}

function asked(page: Page, kit: Kit, blanks: Blanks): Shown {
  const { of } = blanks;
  page.heading("The demo");
  const start = page.line({
    label: "it begins",
    value: kit.demo ? demoStart : undefined,
    input: { date: true },
    format: moment,
    note: formula`IF(ISTEXT(${page.next}),"no date: type a day and hour, such as 2026-03-14 14:00","day and hour")`,
  });
  const row = formula`MATCH(${refTo(page.sheet.name, page.row, 1)},${whole(of.kind)},0)`;
  const wrong = formula`INDEX(${whole(of.wrong)},${row})`;
  const kind = page.line({
    label: "kind to show",
    value: kit.demo ? "spalted boxelder" : undefined,
    input: { list: whole(of.kind) },
    note: formula`IF(${page.next}="","choose a row of the sheet Blanks",IF(ISNA(${row}),"no row of the sheet Blanks is called so",IF(LEN(${wrong})>0,"Blanks says: "&${wrong},"a row of the sheet Blanks")))`,
  });
  const said = refTo(page.sheet.name, kind.row, 3);
  page.alert("bad", kind, formula`OR(LEFT(${said},11)="Blanks says",LEFT(${said},6)="no row")`);
  const count = page.line({
    label: "pieces in each of three loads",
    value: kit.demo ? 4 : undefined,
    input: { from: 1, to: 1e4, whole: true },
    note: formula`IF(${kind}="","",IF(IF(ISNUMBER(${page.next}),OR(${page.next}<1,${page.next}<>INT(${page.next})),TRUE),"type a whole number, 1 or more",IF(SUMIF(${whole(of.kind)},${kind},${whole(of.count)})<3*${page.next},"Blanks has fewer than three loads of it","")))`,
  });
  const pick = (label: string, ref: Ref, unit: string | undefined, format?: string) =>
    page.line({
      label,
      formula: formula`IF(${kind}="","",IF(ISNA(MATCH(${kind},${whole(of.kind)},0)),"",INDEX(${whole(ref)},MATCH(${kind},${whole(of.kind)},0))))`,
      unit,
      format,
      look: format ? "result" : "words",
      note: format && verdict(page.next, "", "the row of Blanks says what is wrong with it"),
    });
  const length = kit.unit("length");
  const wood = pick("wood", of.wood, undefined);
  const sides = {
    thickness: pick("thickness", of.thickness, length, "General"),
    width: pick("width", of.width, length, "General"),
    length: pick("length", of.length, length, "General"),
  };
  const gravity = pick("gravity", of.gravity, undefined, "0.00");
  const volume = pick("wood in one piece", of.volume, kit.unit("volume"), kit.by("0.00", "0.0"));
  const weighed = formula`INDEX(${whole(of.dryWeight)},${row})`;
  return {
    start,
    count,
    bake: formula`INDEX(${whole(of.bake)},${row})`,
    wood,
    ...sides,
    gravity,
    volume,
    dryWeight: page.line({
      label: "oven-dry, one piece",
      formula: formula`IF(${kind}="","",IF(ISNA(${row}),"",IF(SUM(${weighed})>0,${weighed},IF(COUNT(${gravity},${volume})=2,${gravity}*${volume}*${kit.by(16.387064, 1)},""))))`,
      unit: "g",
      format: "0.0",
      note: formula`IF(COUNT(${page.next})=0,"",IF(SUM(${weighed})>0,"weighed","not weighed: gravity from the table times the wood"))`,
    }),
  };
}

import { cautions, first } from "../../cautions";
import { fromLabel } from "../../resin/label";
import { settings } from "../../shop";
import { version as asked, versionText } from "../../version";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { type Ref, refTo } from "../place";
import { dayIn } from "../usdates";

interface Door {
  readonly name: string;
  readonly why: string;
  /** In the order they are used; the first is where the door leads. */
  readonly sheets: readonly string[];
}

const doors: readonly Door[] = [
  { name: "Plan a batch", why: "Which loads, when, how long to bake.", sheets: ["Blanks", "Loads", "Supplies", "Run Log", "Price Tag"] },
  { name: "Run a demo", why: "Count back from the hour, step by step.", sheets: ["Today", "Safety", "Blanks", "Labels", "Handout"] },
  { name: "Look after the resin", why: "How much is left, until when, what to buy.", sheets: ["Resin Book", "Supplies", "My Shop"] },
];

/** Settings whose usual values the label of the resin may know better. */
const labeled = settings.filter(({ basis }) => basis.startsWith(fromLabel)).map(({ name }) => name);

/** Which release answers here, or made the answers that stand here. */
const version = ask(asked, {}, formula`"${versionText}"`);

/** Columns of a door. */
const wide = 2;
const columns = doors.length * wide;

export interface Facts {
  /** How many of the settings that My Shop has first are typed, and how many there are. */
  readonly typed: Formula;
  readonly first: number;
  readonly resin: Ref;
  readonly until: Ref;
}

/** The first page: a picture of the run, three doors into the book, where to begin, and what never to forget. */
export function startSheet(kit: Kit, others: readonly Page[], { typed, first: firsts, resin, until }: Facts): Page {
  const page = new Page("Start", "Stabilizing wood, from the dry blank to the price tag.", [18, 17, 18, 17, 18, 17]);
  page.open("Porewise");
  page.row--;
  page.picture({
    file: "run.png",
    at: { row: page.row, column: 0, rows: 1, columns },
    alt: "A run in five pictures: dry wood, under resin in a vacuum, soaking, baking in foil, and a pen turned from it.",
  });
  page.sheet.heights.set(page.row, 90);
  page.row++;
  const { row } = page;
  for (const [i, { name, why, sheets }] of doors.entries()) {
    const column = i * wide;
    page.across(row, column, wide, { value: name, look: "button", to: sheets[0] });
    page.across(row + 1, column, wide, { value: why, look: "note" });
    for (const [place, sheet] of sheets.entries())
      page.put(row + 2 + Math.floor(place / wide), column + (place % wide), { value: sheet, look: "step", to: sheet });
  }
  page.sheet.heights.set(row, 36);
  page.row = row + 2 + Math.ceil(Math.max(...doors.map(({ sheets }) => sheets.length)) / wide);
  page.skip();
  page.heading(kit.demo ? "Make it yours" : "Start here");
  const begin = page.row;
  page.across(begin, 0, wide, {
    value: kit.demo ? "Make your own: start here first" : "Begin with My Shop",
    look: "button",
    to: "My Shop",
  });
  page.sheet.heights.set(begin, 36);
  page.sheet.cursor = refTo(page.sheet.name, kit.demo ? row : begin, 0);
  page.across(begin, wide, columns - wide, {
    value: kit.demo
      ? "This is an invented shop: look around, change anything. For your own, type over its facts on My Shop, then its rows on Blanks."
      : "1. Type your chamber and the first settings on My Shop. 2. Type your wood on Blanks. 3. Read the plan on Loads, or pick a run on Today.",
    look: "note",
  });
  page.row++;
  const fact = (sheet: string, told: Formula): void => {
    page.put(page.row, 0, { value: sheet, look: "link", to: sheet });
    page.say(told, "note", 1);
  };
  fact("My Shop", formula`${typed}&" of the first ${firsts} settings typed; the others are as usual"`);
  fact(
    "Resin Book",
    formula`IF(ISNUMBER(${resin}),ROUND(${resin},1)&" ${kit.unit("fluid")} in the tub"&IF(ISNUMBER(${until}),", use by "&TEXT(${until},"${dayIn(kit.system)}"),""),"no resin written down yet")`,
  );
  page.skip();
  page.heading("What the colors mean");
  const colors = [
    [
      "you type here",
      "input",
      "Plain numbers, in the unit beside or above them. A formula of your own also takes “3/4 in”, “19 mm” or “95 C”.",
    ],
    ["worked out", "result", "If there is no answer, words beside it say why. A dash (–) means there is no answer."],
    [
      "fixed value",
      "frozen",
      "Only without the add-in: it says “needs add-in” once you change what it rests on; plans, curves and lists stay.",
    ],
  ] as const;
  for (const [label, look, text] of colors) {
    page.put(page.row, 0, { value: label, look });
    page.say(text, "note", 1);
  }
  page.skip();
  page.heading("The sheets");
  for (const { sheet } of others) {
    page.put(page.row, 0, { value: sheet.name, look: "link", to: sheet.name });
    page.say(sheet.purpose, "note", 1);
  }
  page.skip();
  page.heading("With and without the add-in");
  page.say(
    "With the add-in, in Excel or on the page, every number follows what you type. Without it the workbook opens anywhere with built-in formulas: what they cannot work out is a fixed value, and they check less of what you type, so keep to the ranges on My Shop.",
  );
  page.say(
    formula`IF(ISERROR(${version}),"The Porewise functions do not work in this program: add the add-in, or use the workbook without it.","Porewise "&${version}&". Self-check compares its answers with known ones.")`,
    "words",
  );
  page.skip();
  page.heading("Before you start");
  page.say(
    `Before your first run, check these settings on My Shop against the label of your resin: ${labeled.join(", ")}. Until then they are common practice, not the maker's word.`,
    "caution",
  );
  page.say(first, "caution");
  for (const sentence of Object.values(cautions)) page.say(sentence, "caution");
  return page;
}

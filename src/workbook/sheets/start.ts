import { cautions, first } from "../../cautions";
import { formula } from "../formula";
import { Page } from "../page";
import type { Ref } from "../place";

interface Door {
  readonly name: string;
  readonly why: string;
  readonly sheets: readonly string[];
}

const doors: readonly Door[] = [
  {
    name: "I give a demo",
    why: "Count back from the hour, run it, give out a handout.",
    sheets: ["My Shop", "Blanks", "Today", "Safety", "Handout"],
  },
  {
    name: "I do a batch",
    why: "Plan the loads, soak and bake them, price the pieces.",
    sheets: ["Blanks", "Loads", "Supplies", "Run Log", "Price Tag"],
  },
  {
    name: "I look after the resin",
    why: "How much is left, how long it keeps, what to buy.",
    sheets: ["Resin Book", "Supplies", "My Shop"],
  },
];

/** The first page: three doors into the book, what its colors mean, and what never to forget. */
export function startSheet(others: readonly Page[], check: Ref): Page {
  const page = new Page(
    "Start",
    "A run from choosing wood to the price tag: for a demo, for a batch, and for the resin that is left.",
    [22, 46, 12, 12, 12, 12, 12],
    { pages: 1 },
  );
  page.open("Porewise: the workbook");
  page.heading("What are you doing?", "", "sheets in order");
  for (const { name, why, sheets } of doors) {
    page.put(page.row, 0, { value: name, look: "strong" });
    page.put(page.row, 1, { value: why, look: "words" });
    sheets.forEach((sheet, i) => {
      page.put(page.row, 2 + i, { value: sheet, look: "link", to: sheet });
    });
    page.row++;
  }
  page.skip();
  page.heading("What the colors mean");
  const colors = [
    [
      "you type here",
      "input",
      "Plain numbers, in the unit shown beside or above them. A function that you type yourself also takes “3/4 in”, “19 mm” or “95 C”.",
    ],
    [
      "worked out",
      "result",
      "If there is no answer, words beside it say why; so does resting the pointer on an error. A dash (–) means there is no answer.",
    ],
    [
      "fixed value",
      "frozen",
      "Only in the workbook without the add-in: a number that no built-in formula can work out. Once you change what it rests on, it says “needs add-in”; plans, curves and lists stay as they were.",
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
    formula`IF(ISERROR(${check}),"The Porewise functions do not work in this program: add the add-in, or use the workbook without it.",${check})`,
    "words",
  );
  page.skip();
  page.heading("Before you start");
  page.say(
    "Before your first run, check these settings on My Shop against the label of your resin: packet makes, dye rate, catalyzed months, unmixed months, oven, soak hours. Until then they are common practice, not the maker's word.",
    "caution",
  );
  page.say(first, "caution");
  for (const sentence of Object.values(cautions)) page.say(sentence, "caution");
  return page;
}

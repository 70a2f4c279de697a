import { versionText } from "../version";
import { termOf } from "./search";

/** A job at the bench, told in steps; a step may have a formula, and what it answers. */
export interface Step {
  readonly words: string;
  readonly formula?: string;
  /** What the formula answers, as calc says it; a test runs it. */
  readonly gives?: string;
}

export interface Task {
  /** Its page: how-much-resin.html. */
  readonly id: string;
  readonly title: string;
  readonly answer: string;
  readonly steps: readonly Step[];
  /** Functions that it uses or leads to. */
  readonly functions: readonly string[];
  /** Keys of its cautions. */
  readonly cautions: readonly string[];
}

export const tasks: readonly Task[] = [
  {
    id: "how-much-resin",
    title: "How much resin for this load",
    answer: "Pour enough to cover the pieces by about an inch, have what the wood takes up ready beside it, and mix only what is missing.",
    steps: [
      {
        words: "See how the pieces go in. A chamber 6 in across and 10 in high, 12 blanks of 3/4 by 3/4 by 5 in:",
        formula: "=PORE.ARRANGE(6,10,0.75,0.75,5,12)",
        gives: "resin to pour: 1.29 qt",
      },
      {
        words: "Guess what the wood takes up. 38.4 in³ of wood with a specific gravity of 0.45:",
        formula: "=PORE.UPTAKE(38.4,0.45)",
        gives: "resin the wood takes up: about 0.28 qt, likely 0.16 to 0.41",
      },
      {
        words: "Mix what is missing, in whole packets of catalyst. You need 1.6 qt and have 0.5 qt:",
        formula: "=PORE.MIX(1.6,0.5)",
        gives: "packets: about 2, likely 1 to 2",
      },
      {
        words:
          "Weigh the pieces dry and drained. After three runs of one wood your own Run Log replaces the guess: the sheet Blanks then uses it by itself.",
      },
    ],
    functions: ["ARRANGE", "FILL", "UPTAKE", "MIX", "BALLAST", "HEADROOM", "FULLNESS"],
    cautions: ["chamber", "ballast", "resin", "storage"],
  },
  {
    id: "is-it-dry",
    title: "Is it dry",
    answer: "Wood is oven-dry when two weighings two hours apart differ by no more than 0.1 % of its weight.",
    steps: [
      { words: "Put the pieces in an oven at 215 to 220 °F. Weigh one, or better several together, every two hours." },
      {
        words: "Type the weights and the hours:",
        formula: "=PORE.ISDRY({93.4;93.1;93.05},{0;2;4})",
        gives: "weight is constant: yes",
      },
      {
        words: "How wet was it before? Weight now, then oven-dry weight:",
        formula: "=PORE.MOISTURE(104,93)",
        gives: "moisture, oven-dry basis: 11.8 %",
      },
      {
        words:
          "Let the pieces cool in a closed bag before they go near the resin: warm wood can set it, and wood takes up moisture from air.",
      },
    ],
    functions: ["ISDRY", "MOISTURE", "DRYWEIGHT", "STOPWEIGHT", "EMC"],
    cautions: ["wet wood", "oven"],
  },
  {
    id: "plan-a-hundred-blanks",
    title: "Plan a hundred blanks",
    answer:
      "List them on Blanks, set your hours on My Shop, and the sheet Loads says when each load goes in, what to pour and when you are done.",
    steps: [
      { words: "My Shop: type the chamber, its height, the oven shelves, when you open and close, and days off." },
      { words: "Blanks: one row for each kind of blank with its count, sizes, wood and weight. A row with a problem says why." },
      { words: "Loads: type a day and hour to begin, or set “ready by” on My Shop and the plan counts back from it." },
      { words: "Supplies: it says what the plan needs and what to buy." },
      {
        words: "The same in one formula, for 24 maple blanks in a chamber 6 in across and 10 in high:",
        formula: '=PORE.SHOPPINGLIST({"maple",24,0.75,0.75,5,0.45},6,10)',
        gives: "resin to mix 2.00 qt",
      },
    ],
    functions: ["PLAN", "SHOPPINGLIST", "PERLOAD", "WHATTOBUY"],
    cautions: ["chamber", "oven", "storage"],
  },
  {
    id: "cost-of-one-blank",
    title: "What does one blank cost me",
    answer: "Add up what went into the run, divide by the pieces that came out good, then set your margin.",
    steps: [
      {
        words: "The cost of the run: quantities, then the price of one of each.",
        formula: "=PORE.RUNCOST({2;3;0.25},{24.5;4.33;0.1})",
        gives: "cost of the run: 62.02",
      },
      { words: "20 pieces, 4 of them spoiled:", formula: "=PORE.PIECECOST(62.02,20,4)", gives: "cost of one good piece: 3.88" },
      { words: "With a margin of 50 % of the price:", formula: "=PORE.PRICETAG(3.88,50%)", gives: "price to charge: 7.76" },
      { words: "The sheet Price Tag has all of it, and splits the cost among members. Your time and taxes are yours to add." },
    ],
    functions: ["RUNCOST", "PIECECOST", "PRICETAG", "SPLITCOST", "WHATTOBUY"],
    cautions: [],
  },
  {
    id: "run-a-demo",
    title: "Run a demo",
    answer: "Set the hour of the demo on Today; it counts back to when you must dry, load, soak and bake.",
    steps: [
      {
        words: "Today: pick the pieces of up to three loads, and type day and hour of the demo. Every step gets its time and its numbers.",
      },
      { words: "Bake a load beforehand, so that you can cut a cured piece open; put the last load in while people watch." },
      {
        words: "How long does a 3/4 in pen blank bake?",
        formula: '=PORE.BAKE("3/4 in","3/4 in","5 in",0.4)',
        gives: "minutes in the oven: about 46 min, likely 33 to 82",
      },
      { words: "Safety: check off the list, the part for an audience too. Print Handout for people to take home." },
      { words: "On a phone or tablet, Run shows one step at a time with its clock." },
    ],
    functions: ["BAKE", "COOLDOWN", "PUMPDOWN", "WATERBOILS"],
    cautions: ["chamber", "lid", "pump", "resin", "oven"],
  },
  {
    id: "share-with-a-club",
    title: "Share with a club",
    answer: "Send the page as one file, host it for everybody, or hand on a workbook that needs nothing.",
    steps: [
      { words: "One file: porewise.html opens with a double click in Chrome, Edge or Firefox, without a network." },
      {
        words:
          "A workbook: on the page choose Save as xlsx and take the copy for people without the add-in. It opens in any spreadsheet program.",
      },
      { words: "A host: put the folder from `npm run package` on any web host with https. Everybody opens its address." },
      { words: "Excel for all members: the administrator of your Microsoft 365 organization installs the manifest from that host." },
    ],
    functions: ["SPLITCOST"],
    cautions: [],
  },
  {
    id: "without-excel",
    title: "Without Excel",
    answer: "Use the page in a browser: it has the spreadsheet, the workbook and all functions, and it keeps your work on your computer.",
    steps: [
      {
        words:
          "Open the page. It starts with an invented shop to look around in; the button with the workbook's name has an empty one for yours.",
      },
      { words: "Type a formula in any empty cell:", formula: "=PORE.FILL(6,5,104)", gives: "resin to pour: 1.14 qt" },
      { words: "Save as xlsx writes a file to your computer. Open a file reads one, also from other spreadsheet programs." },
      {
        words:
          "In another spreadsheet program use the workbook without the add-in: built-in formulas, and fixed values where there are none.",
      },
    ],
    functions: ["FILL", "BAKE", "UPTAKE"],
    cautions: [],
  },
  {
    id: "first-time-in-excel",
    title: "First time in Excel",
    answer: "Install the add-in once; then its functions work in every workbook.",
    steps: [
      { words: "Install it: “On a host of your own” in the help says how on Windows, on a Mac and on the web." },
      { words: "Home tab, Porewise: the side pane opens. Under Workbook choose Insert into this workbook to get the sheets." },
      { words: "Type this in an empty cell. It answers within a second:", formula: "=PORE.VERSION()", gives: `version: ${versionText}` },
      {
        words:
          "#NAME? in a cell: open the pane, Workbook, and enter the formulas again. #REF! in every cell: two copies are installed; remove one.",
      },
      {
        words: "Select any cell with a number from Porewise, then Working in the pane: it shows the equation, your numbers and the source.",
      },
      { words: "“Ten steps for a first look in Excel” in the help show whether everything works in your Excel." },
    ],
    functions: ["VERSION"],
    cautions: [],
  },
];

/** Whether a question is about a job: half of its words or more stand in the job's title, small words aside. */
export function isMeant({ title }: Task, question: string): boolean {
  const wordsOf = (text: string) => text.split(/[^a-z0-9]+/i).flatMap((word) => termOf(word) ?? []);
  const own = new Set(wordsOf(title));
  const asked = wordsOf(question);
  return asked.length > 0 && asked.filter((word) => own.has(word)).length * 2 >= asked.length;
}

import type { Model } from "@odoo/o-spreadsheet";
import { catalogue } from "../src/catalogue";
import { cautions, cautionsOf } from "../src/cautions";
import { demoBook } from "./book";
import { Files } from "./files";
import { mount, open, prepare } from "./grid";
import { pageHost } from "./host";
import { Mirror } from "./mirror";
import { Pane } from "./pane";
import { forget, Keeper, type Kept, kept, putAside, type State } from "./store";

const part = <E extends HTMLElement = HTMLElement>(id: string) => document.getElementById(id) as E;

const clock = (at: number) => new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

function tellSaved(state: State, at: number): void {
  const words = {
    waiting: "saving",
    kept: `saved ${clock(at)}`,
    failed: "not saved: this browser keeps nothing here. Leave the page open",
  };
  part("saved").textContent = words[state];
  part("saved").dataset.state = state;
}

/** Asks in the page and resolves to the answer. */
function ask(title: string, words: string, yes: string, no: string): Promise<boolean> {
  const dialog = part<HTMLDialogElement>("ask");
  part("ask-title").textContent = title;
  part("ask-words").textContent = words;
  const [keep, go] = dialog.querySelectorAll("button");
  keep.textContent = no;
  keep.hidden = no === "";
  go.textContent = yes;
  dialog.returnValue = "no";
  dialog.showModal();
  return new Promise((answer) => dialog.addEventListener("close", () => answer(dialog.returnValue === "yes"), { once: true }));
}

/** The cautions that stand with the numbers: those of the oven and the resin in sight, all others a press away. */
function showCautions(): void {
  part("care").textContent = `${cautions.oven} ${cautions.resin}`;
  const keys = new Set(catalogue.flatMap((contract) => contract.cautions));
  const items = cautionsOf([...keys]).map((words) => Object.assign(document.createElement("li"), { textContent: words }));
  part("all-cautions").replaceChildren(...items);
  part("cautions").addEventListener("click", () => part<HTMLDialogElement>("all").showModal());
}

async function startAfresh(keeper: Keeper): Promise<void> {
  const words = "What was typed here is deleted for good, and the invented shop's hundred blanks come back.";
  if (!(await ask("Start afresh?", words, "Start afresh", "Keep my work"))) return;
  keeper.stop();
  await forget().catch(() => {});
  location.reload();
}

const nextFrame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));

const firstFormula = [9, 7] as const;

/** Opens what was kept, or the invented shop where there is nothing or it does not open any more. */
function reopen(last: Kept | undefined, changed: () => void): { model: Model; failed: boolean } {
  if (last) {
    try {
      return { model: open(last.book, changed), failed: false };
    } catch {
      void putAside(last);
    }
  }
  return { model: open(demoBook(), changed), failed: last !== undefined };
}

async function start(): Promise<void> {
  showCautions();
  prepare();
  const last = await kept();
  const changed = () => keeper.changed();
  const parts = new Map(Object.entries(last?.parts ?? {}));
  const { print = {}, name } = last ?? {};
  const keeper: Keeper = new Keeper(() => ({ book: model.exportData(), parts: Object.fromEntries(parts), print, name }), tellSaved);
  const { model, failed } = reopen(last, changed);
  if (last && !failed) tellSaved("kept", last.at);
  const mirror = new Mirror(model, part("mirror"), part("here"));
  model.on("update", mirror, () => mirror.refresh());
  await mount(model, part("grid"), {
    notify: (words) => void ask("Please note", words, "Understood", ""),
    confirm: (words, yes, no) => void ask("Please confirm", words, "Go on", "Leave it").then((go) => (go ? yes() : no?.())),
  });
  // The formula bar then shows what one formula does for a whole column; a grid that has no size yet would scroll away to it.
  await nextFrame();
  if (!last || failed) model.selection.selectCell(...firstFormula);
  mirror.refresh();
  const keptParts = {
    get: (namespace: string) => parts.get(namespace),
    set: (namespace: string, xml: string) => {
      parts.set(namespace, xml);
      changed();
    },
  };
  const files = new Files({
    model,
    beside: () => ({ documents: Object.fromEntries(parts), print }),
    name: name?.replace(/(\.\w+)?$/, ".xlsx") ?? "porewise.xlsx",
    ask,
    tell: (words) => {
      part("saved").textContent = words;
    },
    leave: () => keeper.stop(),
    stay: () => keeper.goOn(),
  });
  files.listen(part("open"), part<HTMLInputElement>("file"), part("save"));
  const host = { ...pageHost(model, keptParts), open: (file: Uint8Array) => files.open(file, "the workbook") };
  new Pane(part("grid"), part("pane"), part("functions"), host);
  part("afresh").addEventListener("click", () => startAfresh(keeper));
  addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keeper.flush());
  document.documentElement.dataset.ready = "yes";
  if (failed) void ask("Please note", "What was kept from last time did not open: this is a fresh start.", "Understood", "");
}

start();

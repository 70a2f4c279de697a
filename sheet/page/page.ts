import { Asker } from "./ask";
import { Care, holdsOurs } from "./care";
import type { Standing } from "./current";
import { Desk } from "./desk";
import { nameFields } from "./fieldnames";
import { Files, type Tell } from "./files";
import { first } from "./first";
import { follow, followOnPress } from "./follow";
import { prepare } from "./grid";
import { pageHost } from "./host";
import { Keys } from "./keys";
import { Library } from "./library";
import { Menu } from "./menu";
import { followOffline } from "./offline";
import { Pane } from "./pane";
import { RunScreen } from "./run";
import { standingWords } from "./standing";
import { Ways } from "./ways";
import { wholeOf } from "./whole";
import { Workbooks } from "./workbooks";

const part = <E extends HTMLElement = HTMLElement>(id: string) => document.getElementById(id) as E;

function showStanding(standing: Standing): void {
  part("saved").textContent = standingWords(standing);
  part("saved").dataset.state = standing.state;
  part("workbooks").textContent = standing.name;
  document.title = `${standing.name} - Porewise`;
}

let telling: ReturnType<typeof setTimeout> | undefined;

/** Says for a while what was done, and offers what may come next; how keeping stands stays in sight beside it. */
const tell: Tell = (words, next) => {
  clearTimeout(telling);
  const quiet = () => {
    part("told").textContent = "";
    part("next").hidden = true;
  };
  part("told").textContent = words;
  part("next").hidden = !next;
  part("next").textContent = next?.words ?? "";
  part("next").onclick = () => {
    quiet();
    next?.act();
  };
  telling = setTimeout(quiet, next ? 30_000 : 8_000);
};

async function start(): Promise<void> {
  const care = new Care(part("care"), part("cautions"), part<HTMLDialogElement>("all"), part("here-cautions"), part("all-cautions"));
  prepare();
  const asker = new Asker(part<HTMLDialogElement>("ask"));
  const asks = {
    notify: (words: string) => void asker.tell(words),
    confirm: (words: string, yes: () => void, no?: () => void) =>
      void asker.ask("Please confirm", words, "Continue", "Cancel").then((go) => (go ? yes() : no?.())),
  };
  const desk = new Desk({ grid: part("grid"), mirror: part("mirror"), here: part("here"), spoken: part("spoken") }, asks, () =>
    library.changed(),
  );
  const library: Library = new Library({
    desk,
    tell: showStanding,
    note: asks.notify,
    mayLose: () =>
      asker.ask(
        "Leave without saving?",
        "The last changes on the page could not be saved in this browser and will be lost.",
        "Leave",
        "Stay",
      ),
    first,
  });
  await library.begin();
  const files: Files = new Files(library, asker, tell, () =>
    holdsOurs(desk.model) ? () => whole.copyWithValues({ progress: () => undefined, stop: new AbortController().signal }) : undefined,
  );
  const whole = wholeOf(desk, library, files);
  files.listen(part("open"), part<HTMLInputElement>("file"), part("save"));
  const workbooks = new Workbooks(part<HTMLDialogElement>("books"), library, asker, tell);
  part("workbooks").addEventListener("click", () => void workbooks.open());
  desk.watch(() => care.refresh(desk.model));
  care.refresh(desk.model);
  nameFields(part("grid"));
  new Menu(part("more"), part("acts"), part("tools"));
  const ways = new Ways(part("grid"), () => desk.model);
  followOnPress(part("grid"), () => follow(desk.model, asks.notify));
  const host = pageHost(desk, whole, () => library.current.id);
  const pane: Pane = new Pane(part("pane"), part("functions"), host, {
    tell,
    listen: (inside) => keys.listen(inside),
    toGrid: ways.toGrid,
  });
  const keys: Keys = new Keys({
    parts: ways.parts(part("head"), pane, part("cautions")),
    toGrid: ways.toGrid,
    save: () => {
      // What is half typed belongs to the file.
      ways.finish();
      part("save").click();
    },
    print: ways.print,
    follow: () => follow(desk.model, asks.notify),
  });
  keys.show(part("keys"), part<HTMLDialogElement>("keyboard"), part("keyboard-list"));
  new RunScreen({ alone: part("alone"), toSheet: part("to-sheet"), toRun: part("to-run") }, host, tell);
  followOffline();
  addEventListener("visibilitychange", () => document.visibilityState === "hidden" && library.flush());
  addEventListener("pagehide", () => {
    // A cell that is being typed into takes what was typed when it loses the focus.
    (document.activeElement as HTMLElement | null)?.blur();
    library.flush();
  });
  // What this browser refuses to keep is lost with the page.
  addEventListener("beforeunload", (event) => library.waits && library.current.state !== "waiting" && event.preventDefault());
  document.documentElement.dataset.ready = "yes";
  desk.settle();
}

start().catch((error: unknown) => {
  console.error(error);
  dispatchEvent(new CustomEvent("halt", { detail: "A file of this page could not be loaded, or this browser is too old for it." }));
});

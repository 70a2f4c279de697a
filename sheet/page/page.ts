import { catalogue } from "../../src/catalogue";
import { cautions, cautionsOf } from "../../src/cautions";
import { Asker } from "./ask";
import { Desk } from "./desk";
import { Files } from "./files";
import { first } from "./first";
import { prepare } from "./grid";
import { pageHost } from "./host";
import { Library, type Standing } from "./kept/library";
import { followOffline } from "./offline";
import { Pane } from "./pane";
import { RunScreen } from "./run";
import { standingWords } from "./standing";
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

/** Says for a while what was done; how keeping stands stays in sight beside it. */
function tell(words: string): void {
  clearTimeout(telling);
  part("told").textContent = words;
  telling = setTimeout(() => {
    part("told").textContent = "";
  }, 8_000);
}

/** The cautions that stand with the numbers: those of the oven and the resin in sight, all others a press away. */
function showCautions(): void {
  part("care").textContent = `${cautions.oven} ${cautions.resin}`;
  const keys = new Set(catalogue.flatMap((contract) => contract.cautions));
  const items = cautionsOf([...keys]).map((words) => Object.assign(document.createElement("li"), { textContent: words }));
  part("all-cautions").replaceChildren(...items);
  part("cautions").addEventListener("click", () => part<HTMLDialogElement>("all").showModal());
}

async function start(): Promise<void> {
  showCautions();
  prepare();
  const asker = new Asker(part<HTMLDialogElement>("ask"));
  const asks = {
    notify: (words: string) => void asker.tell(words),
    confirm: (words: string, yes: () => void, no?: () => void) =>
      void asker.ask("Please confirm", words, "Go on", "Leave it").then((go) => (go ? yes() : no?.())),
  };
  const desk = new Desk({ grid: part("grid"), mirror: part("mirror"), here: part("here") }, asks, () => library.changed());
  const library: Library = new Library({
    desk,
    tell: showStanding,
    note: asks.notify,
    mayLose: () =>
      asker.ask(
        "Leave without keeping it?",
        "The last changes on the page could not be kept in this browser, and are lost.",
        "Leave",
        "Stay",
      ),
    first,
  });
  await library.begin();
  const files = new Files(library, asker, tell, part("stop"));
  files.listen(part("open"), part<HTMLInputElement>("file"), part("save"));
  const workbooks = new Workbooks(part<HTMLDialogElement>("books"), library, asker, tell);
  part("workbooks").addEventListener("click", () => void workbooks.open());
  const host = pageHost(desk, wholeOf(desk, library, files));
  new Pane(part("grid"), part("pane"), part("functions"), host, tell);
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
}

start().catch(() => {
  part("saved").dataset.state = "failed";
  part("saved").textContent =
    "The page did not start: some of its files cannot be reached. Your work is kept; reload the page to try again.";
});

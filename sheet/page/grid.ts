import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import { fetched } from "../../taskpane/inside";
import { localeOf } from "../enginedata";
import { extend } from "../extend";
import { pivotInTheWay, pivotWords } from "../file/beside/pivotguard";
import { register } from "../functions";
import { budgeted } from "../guard";
import { calculateAll } from "../onsight";
import { respelled } from "../quotes";
import { hidden, translated } from "./enginewords";
import { keepUpWithKeys } from "./fastkeys";
import { roundStatistics } from "./statistic";
import { adapted } from "./templates";
import { App, engine } from "./vendor";

function hideMenus(): void {
  for (const [menu, ids] of Object.entries(hidden)) {
    const entry = engine.registries.topbarMenuRegistry.content[menu] as { children: { id?: string }[] };
    entry.children = entry.children.filter(({ id }) => !id || !ids.includes(id));
  }
}

export interface Asks {
  readonly notify: (words: string) => void;
  readonly confirm: (words: string, yes: () => void, no?: () => void) => void;
}

/** Every command that changes the workbook passes the engine's transport service; selecting a cell does not. */
const changes = new Set(["REMOTE_REVISION", "REVISION_UNDONE", "REVISION_REDONE"]);

function transport(changed: () => void) {
  class Watched extends engine.LocalTransportService {
    override async sendMessage(message: Parameters<OSpreadsheet.TransportService["sendMessage"]>[0]): Promise<void> {
      await super.sendMessage(message);
      if (changes.has(message.type)) changed();
    }
  }
  return new Watched();
}

/** A formula pasted from another program may hold `""` inside a text. */
function respellTyped(model: Model): void {
  const dispatch = model.dispatch.bind(model) as (type: string, payload?: { content?: string }) => any;
  model.dispatch = ((type: string, payload?: { content?: string }) =>
    type === "UPDATE_CELL" && payload?.content?.startsWith("=")
      ? dispatch(type, { ...payload, content: respelled(payload.content) })
      : dispatch(type, payload)) as Model["dispatch"];
}

/** Says why a command that would split a pivot table was refused. */
function sayRefused(model: Model, notify: (words: string) => void): void {
  const dispatch = model.dispatch.bind(model) as (type: string, payload?: object) => any;
  model.dispatch = ((type: string, payload?: object) => {
    const result = dispatch(type, payload);
    if (result?.isCancelledBecause?.(pivotInTheWay)) notify(pivotWords);
    return result;
  }) as Model["dispatch"];
}

/** Tells of an entry before the cell takes it. */
export function onEntry(model: Model, tell: (at: CellPosition) => void): void {
  const dispatch = model.dispatch.bind(model) as (type: string, payload?: Partial<CellPosition>) => any;
  model.dispatch = ((type: string, payload?: Partial<CellPosition>) => {
    const { sheetId, col, row } = payload ?? {};
    if (type === "UPDATE_CELL" && sheetId !== undefined && col !== undefined && row !== undefined) tell({ sheetId, col, row });
    return dispatch(type, payload);
  }) as Model["dispatch"];
}

/**
 * Loads a workbook with the catalogue's functions in it; `changed` is told of every change to what it holds. `over` tells that its
 * formulas asked for more than a workbook may while it opens: all of them, or those of the sheet in sight.
 */
export function open(
  book: object,
  { readOnly, all }: { readonly readOnly: boolean; readonly all: boolean },
  changed: () => void,
): { readonly model: Model; readonly over: boolean } {
  const { result: model, over } = budgeted(() => {
    const made = new engine.Model(
      { ...book, settings: { locale: localeOf(navigator.language) } },
      { transportService: transport(changed), mode: readOnly ? "readonly" : "normal" },
    );
    if (all) calculateAll(made);
    return made;
  });
  respellTyped(model);
  return { model, over };
}

/** Makes the functions known, once, before a workbook opens. */
export function prepare(): void {
  engine.setTranslationMethod(translated);
  register(engine);
  extend(engine);
  hideMenus();
  roundStatistics();
  keepUpWithKeys();
  // Frozen rows and columns are fitted to the window instead.
  (engine.Spreadsheet.prototype as unknown as { checkViewportSize: () => void }).checkViewportSize = () => undefined;
}

let templates: Promise<string> | undefined;
const templatesOf = (): Promise<string> => {
  templates ??= fetched("vendor/o_spreadsheet.xml").then((answer) => {
    if (!answer.ok) throw new Error("The spreadsheet's own files cannot be reached.");
    return answer.text().then(adapted);
  });
  templates.catch(() => {
    templates = undefined;
  });
  return templates;
};

/** A mounted workbook: hidden until it is complete. */
export interface View {
  show(): void;
  close(): void;
}

/** Draws a workbook beside the one in sight. `ended` is told when the engine gives its drawing up after an error of its own. */
export async function mount(model: Model, place: HTMLElement, asks: Asks, ended: () => void): Promise<View> {
  sayRefused(model, asks.notify);
  const props = {
    model,
    notifyUser: ({ text }: { text: string }) => asks.notify(text),
    raiseError: (text: string, done?: () => void) => {
      asks.notify(text);
      done?.();
    },
    askConfirmation: asks.confirm,
    colorScheme: matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light",
  };
  const app = new App(engine.Spreadsheet as never, { props, templates: await templatesOf() } as never);
  const stage = Object.assign(document.createElement("div"), { className: "stage stage-waiting" });
  // The engine measures the first grid in the document, which must be the new one.
  place.prepend(stage);
  let closing = true;
  const destroy = app.destroy.bind(app);
  app.destroy = () => {
    destroy();
    if (!closing) ended();
  };
  try {
    await app.mount(stage);
  } catch (error) {
    stage.remove();
    throw error;
  }
  closing = false;
  return {
    show: () => stage.classList.remove("stage-waiting"),
    close() {
      closing = true;
      app.destroy();
      stage.remove();
    },
  };
}

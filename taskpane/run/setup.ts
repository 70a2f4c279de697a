import { html, nothing, type TemplateResult } from "lit";
import { capital } from "../../shared/capital";
import { mostKinds, mostLoads } from "../../src/run/schema";
import type { Sources } from "../sources";
import { blankRow, type Draft, type Row, type Slip, withLoads } from "./choosing";

interface Acts {
  readonly change: (draft: Draft) => void;
  readonly begin: (event: Event) => void;
  readonly cancel?: () => void;
}

const value = (event: Event) => (event.target as HTMLInputElement).value;

const slipAt = (slip: Slip | undefined, field: string) =>
  slip?.field === field ? html`<p class="fault" id="${field}-slip">${slip.words}</p>` : nothing;

/** Asks for a run: which pieces in which loads, what color, and when. */
export function setupForm(draft: Draft, sources: Sources, slip: Slip | undefined, acts: Acts): TemplateResult {
  const { change } = acts;
  const setRows = (load: number, rows: readonly Row[]) =>
    change(
      withLoads(
        draft,
        draft.loads.map((one, i) => (i === load ? rows : one)),
        sources,
      ),
    );
  const length = sources.system === "US" ? "in" : "mm";

  const text = (
    id: string,
    label: string,
    now: string,
    typed: (words: string) => void,
    more: { mode?: string; list?: string } = {},
  ) => html`
    <div class="run-field">
      <label for=${id}>${label}</label>
      <input id=${id} autocomplete="off" inputmode=${more.mode ?? "text"} list=${more.list ?? nothing} .value=${now}
        aria-invalid=${slip?.field === id} aria-describedby=${slip?.field === id ? `${id}-slip` : nothing} @input=${(event: Event) => typed(value(event))} />
      ${slipAt(slip, id)}
    </div>`;

  const typedPiece = (row: Row, id: string, set: (row: Row) => void) => html`
    ${text(`${id}-wood`, "Wood", row.wood, (wood) => set({ ...row, wood }))}
    <div class="run-three">
      ${(["thickness", "width", "length"] as const).map((label, i) =>
        text(`${id}-${label}`, `${capital(label)}, ${length}`, row.sizes[i], (size) =>
          set({ ...row, sizes: row.sizes.map((old, at) => (at === i ? size : old)) as never }),
        ),
      )}
    </div>`;

  const piece = (row: Row, load: number, index: number) => {
    const id = `run-${load}-${index}`;
    const rows = draft.loads[load];
    const set = (changed: Row) =>
      setRows(
        load,
        rows.map((one, i) => (i === index ? changed : one)),
      );
    const known = sources.blanks.length > 0;
    return html`<div class="run-piece">
      <div class="run-pick">
        ${
          known
            ? html`<div class="run-field">
              <label for="${id}-pick">Pieces</label>
              <select id="${id}-pick" aria-invalid=${slip?.field === `${id}-pick`} aria-describedby=${slip?.field === `${id}-pick` ? `${id}-pick-slip` : nothing} @change=${(event: Event) => set({ ...row, pick: value(event) })}>
                ${sources.blanks.map(({ name, problem }) => html`<option value=${name} ?selected=${name === row.pick}>${name}${problem ? `: ${problem}` : ""}</option>`)}
                <option value="" ?selected=${row.pick === ""}>other: type its sizes</option>
              </select>
              ${slipAt(slip, `${id}-pick`)}
            </div>`
            : nothing
        }
        ${text(`${id}-count`, "How many", row.count, (count) => set({ ...row, count }), { mode: "numeric" })}
        ${
          rows.length > 1
            ? html`<button type="button" class="run-small" aria-label="Remove these pieces" @click=${() =>
                setRows(
                  load,
                  rows.filter((_, i) => i !== index),
                )}>Remove</button>`
            : nothing
        }
      </div>
      ${row.pick === "" || !known ? typedPiece(row, id, set) : nothing}
    </div>`;
  };

  const load = (rows: readonly Row[], i: number) => html`<fieldset class="run-load">
    <legend>${draft.loads.length > 1 ? `Load ${i + 1}` : "What goes in"}</legend>
    ${rows.map((row, index) => piece(row, i, index))}
    <div class="run-row">
      ${rows.length < mostKinds ? html`<button type="button" class="run-small" id="run-${i}-more" @click=${() => setRows(i, [...rows, { ...blankRow, pick: sources.blanks[0]?.name ?? "" }])}>Add pieces</button>` : nothing}
      ${
        draft.loads.length > 1
          ? html`<button type="button" class="run-small" @click=${() =>
              change(
                withLoads(
                  draft,
                  draft.loads.filter((_, at) => at !== i),
                  sources,
                ),
              )}>Remove load ${i + 1}</button>`
          : nothing
      }
    </div>
  </fieldset>`;

  const radio = (how: Draft["how"], label: string) => html`<label class="run-choice">
    <input type="radio" name="run-how" value=${how} ?checked=${draft.how === how} @change=${() => change({ ...draft, how })} />${label}</label>`;

  return html`<form class="run-setup" @submit=${acts.begin} novalidate>
    <h2 id="run-title" tabindex="-1">Start a run</h2>
    ${draft.loads.map(load)}
    ${
      draft.loads.length < mostLoads
        ? html`<button type="button" class="run-small" id="run-add-load" @click=${() => change({ ...draft, loads: [...draft.loads, draft.loads.at(-1)!] })}>Add a load</button>`
        : nothing
    }
    ${
      draft.loads.length > 1
        ? html`<label class="run-choice"><input type="checkbox" id="run-together" .checked=${draft.together} @change=${(event: Event) => change({ ...draft, together: (event.target as HTMLInputElement).checked })} />All loads are in the chamber together</label>`
        : nothing
    }
    ${text("run-color", "Color (optional)", draft.color, (color) => change({ ...draft, color }))}
    <div class="run-two">
      ${text("run-chamber", `Chamber or tub, inside, ${length}`, draft.chamber, (chamber) => change({ ...draft, chamber }))}
      ${text("run-height", `Height inside, ${length}`, draft.height, (height) => change({ ...draft, height }))}
    </div>
    <fieldset class="run-when">
      <legend>When</legend>
      ${radio("now", "Start now")} ${radio("demo", "The demo begins at")}
      ${
        draft.how === "demo"
          ? html`<div class="run-field"><label for="run-at">Day and time of the demo</label>
            <input id="run-at" type="datetime-local" .value=${draft.at} aria-invalid=${slip?.field === "run-at"} @input=${(event: Event) => change({ ...draft, at: value(event) })} />${slipAt(slip, "run-at")}</div>`
          : nothing
      }
    </fieldset>
    <div class="run-acts">
      <button type="submit" class="run-go" id="run-begin">${draft.how === "now" ? "Start now" : "Plan the run"}</button>
      ${acts.cancel ? html`<button type="button" class="run-second" @click=${acts.cancel}>Cancel</button>` : nothing}
    </div>
  </form>`;
}

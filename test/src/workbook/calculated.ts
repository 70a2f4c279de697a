import { helpers } from "@odoo/o-spreadsheet";
import type { Cached } from "../../../src/workbook/cached";
import type { Template } from "../../../src/workbook/template";
import { shownIn, type Typed, typedInto, typedOf } from "../../../tool/recalculated";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

type Cells = Typed["cells"];

/** A model, and what is typed into each of its sheets. */
interface Shared {
  readonly model: ReturnType<typeof typedInto>;
  readonly typed: Map<string, Cells>;
}

const models = new Map<string, Shared>();

function started(sheets: readonly Typed[]): Shared {
  return { model: typedInto(sheets), typed: new Map(sheets.map(({ id, cells }) => [id, cells])) };
}

/** Types what differs, and empties what is typed no more. */
function turn({ model, typed }: Shared, sheets: readonly Typed[]): void {
  for (const { id, cells } of sheets) {
    const before = typed.get(id)!;
    if (before === cells) continue;
    for (const at of new Set([...Object.keys(before), ...Object.keys(cells)]))
      if (before[at] !== cells[at]) model.dispatch("UPDATE_CELL", { sheetId: id, ...helpers.toCartesian(at), content: cells[at] ?? "" });
    typed.set(id, cells);
  }
}

/** A template as it stands now, calculated: those of one name share a model, into which only what differs is typed. */
export function calculated(name: string, template: Template): Cached {
  const sheets = typedOf(template);
  const shown = (): Cached => {
    const shared = models.get(name) ?? started(sheets);
    models.set(name, shared);
    turn(shared, sheets);
    return shownIn(shared.model);
  };
  return { value: (...at) => shown().value(...at), spill: (...at) => shown().spill(...at) };
}

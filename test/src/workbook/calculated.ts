import { helpers, registries, UIPlugin } from "@odoo/o-spreadsheet";
import type { Cached } from "../../../src/workbook/cached";
import type { Template } from "../../../src/workbook/sheets/template";
import { shownIn, type Typed, typedInto, typedOf } from "../../../tool/recalculated";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

type Cells = Typed["cells"];

/** Cells typed at one stroke: the engine calculates at the end of each command, and this is a single one. */
interface TypeCells {
  readonly type: "TYPE_CELLS";
  readonly cells: readonly { readonly sheetId: string; readonly col: number; readonly row: number; readonly content: string }[];
}

class Typing extends UIPlugin {
  override handle(command: object): void {
    const { type, cells } = command as TypeCells;
    if (type === "TYPE_CELLS") for (const cell of cells) this.dispatch("UPDATE_CELL", cell);
  }
}
registries.featurePluginRegistry.add("typing", Typing);

// The engine packs the parts of a command with what Node 20 does not have.
if (!("groupBy" in Object))
  Object.assign(Object, {
    groupBy<T>(items: readonly T[], keyOf: (item: T) => string) {
      const groups: Record<string, T[]> = {};
      for (const item of items) {
        const key = keyOf(item);
        groups[key] = [...(groups[key] ?? []), item];
      }
      return groups;
    },
  });

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
  const differing: TypeCells["cells"][number][] = [];
  for (const { id, cells } of sheets) {
    const before = typed.get(id)!;
    if (before === cells) continue;
    for (const at of new Set([...Object.keys(before), ...Object.keys(cells)]))
      if (before[at] !== cells[at]) differing.push({ sheetId: id, ...helpers.toCartesian(at), content: cells[at] ?? "" });
    typed.set(id, cells);
  }
  if (differing.length) (model.dispatch as (type: string, payload: object) => void)("TYPE_CELLS", { cells: differing });
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

import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { type Block, isIn } from "../../../shared/xlsx/address";
import { groupsKey } from "./groups";
import { reachOf, whole } from "./reach";
import { noStructure, type Step, type Structure, structureOf, touchKey } from "./structure";

type Engine = Pick<typeof OSpreadsheet, "CorePlugin" | "registries">;
type Command = OSpreadsheet.CoreCommand;

const beyond: Readonly<Partial<Record<Command["type"], string>>> = {
  CREATE_CHART: "charts",
  UPDATE_CHART: "charts",
  DELETE_CHART: "charts",
  CREATE_FIGURE: "charts and pictures",
  UPDATE_FIGURE: "charts and pictures",
  DELETE_FIGURE: "charts and pictures",
  CREATE_IMAGE: "pictures",
  CREATE_CAROUSEL: "charts and pictures",
  UPDATE_CAROUSEL: "charts and pictures",
  CREATE_TABLE: "tables",
  ADD_PIVOT: "pivot tables",
  UPDATE_PIVOT: "pivot tables",
  INSERT_PIVOT: "pivot tables",
  REMOVE_PIVOT: "pivot tables",
  DUPLICATE_PIVOT: "pivot tables",
};

/** The rule that a command makes, changes or takes away; or that it changes groups. */
function touchedBy(command: Command): string | undefined {
  switch (command.type) {
    case "ADD_CONDITIONAL_FORMAT":
      return command.cf.id;
    case "CHANGE_CONDITIONAL_FORMAT_PRIORITY":
      return command.cfId;
    case "ADD_DATA_VALIDATION_RULE":
      return command.rule.id;
    case "REMOVE_CONDITIONAL_FORMAT":
    case "REMOVE_DATA_VALIDATION_RULE":
      return command.id;
    case "GROUP_HEADERS":
    case "UNGROUP_HEADERS":
    case "FOLD_HEADER_GROUP":
    case "UNFOLD_HEADER_GROUP":
    case "FOLD_ALL_HEADER_GROUPS":
    case "UNFOLD_ALL_HEADER_GROUPS":
    case "FOLD_HEADER_GROUPS_IN_ZONE":
    case "UNFOLD_HEADER_GROUPS_IN_ZONE":
      return groupsKey;
    default:
      return undefined;
  }
}

/** Runs of neighbors among lines, the last first: taken out in this order none of them moves another. */
function runs(lines: readonly number[]): { at: number; count: number }[] {
  const found: { at: number; count: number }[] = [];
  for (const line of [...new Set(lines)].sort((a, b) => b - a)) {
    const last = found.at(-1);
    if (last && last.at === line + 1) {
      last.at = line;
      last.count++;
    } else found.push({ at: line, count: 1 });
  }
  return found;
}

const axes = { ROW: "row", COL: "column" } as const;

/** A plugin that records the engine's commands as they are executed. */
export function logCommands({ CorePlugin, registries }: Engine): void {
  class StructurePlugin extends CorePlugin {
    static override getters = [];
    structure: Structure = noStructure;
    /** Where anything was done, each range a key: one more of them costs as little as the first. */
    reached: Record<string, Record<string, true>> | undefined;
    /** The ranges of the command that is carried out. */
    private under: readonly Block[] = [];
    /** A sheet that is being made as a copy: its pictures are a part of that. */
    private whole: string | undefined;

    private update(change: Partial<Structure>): void {
      const { history } = this as unknown as { history: { update: (...path: unknown[]) => void } };
      history.update("structure", { ...this.structure, ...change });
    }

    private touch(sheetId: string, id: string): void {
      const key = touchKey(sheetId, id);
      if (!this.structure.touched.includes(key)) this.update({ touched: [...this.structure.touched, key] });
    }

    private step(...steps: readonly Step[]): void {
      this.update({ steps: [...this.structure.steps, ...steps] });
    }

    private reach(command: Command): void {
      if (!this.reached) return;
      const { history } = this as unknown as { history: { update: (...path: unknown[]) => void } };
      const reach = reachOf(command);
      if (!reach) {
        history.update("reached", undefined);
        return;
      }
      // What is done to a range is done to each of its cells.
      if (command.type === "UPDATE_CELL" && this.under.some((block) => isIn(block, { row: command.row, column: command.col }))) return;
      if ("target" in command && !("targetSheetId" in command)) this.under = command.target;
      for (const [sheet, ranges] of Object.entries(reach)) {
        if (!this.reached[sheet]) history.update("reached", sheet, {});
        for (const range of ranges)
          if (!this.reached[sheet][range] && !this.reached[sheet][whole]) history.update("reached", sheet, range, true);
      }
    }

    override beforeHandle(command: Command): void {
      this.reach(command);
      if (command.type === "DUPLICATE_SHEET") this.whole = command.sheetIdTo;
    }

    override handle(command: Command): void {
      // Opening sends one such command for each cell: not recorded.
      if (command.type === "UPDATE_CELL_POSITION") return;
      if ("target" in command) this.under = [];
      if (command.type === "DUPLICATE_SHEET") this.whole = undefined;
      // The engine's table around a spilled range is no table in a file.
      const isTable = command.type === "CREATE_TABLE" && command.tableType !== "dynamic";
      const words = isTable ? undefined : beyond[command.type];
      const sheet = "sheetId" in command ? command.sheetId : "";
      const isNew = words && sheet !== this.whole && !this.structure.beyond.some((one) => one.words === words && one.sheet === sheet);
      if (isNew) this.update({ beyond: [...this.structure.beyond, { words, sheet }] });
      const touched = touchedBy(command);
      if (touched !== undefined) this.touch(sheet, touched);
      switch (command.type) {
        case "ADD_COLUMNS_ROWS": {
          const { sheetId, dimension, base, position, quantity } = command;
          const at = position === "before" ? base : base + 1;
          const lines = dimension === "ROW" ? this.getters.getNumberRows(sheetId) : this.getters.getNumberCols(sheetId);
          // Rows added at the end of the grid are no change to the file's sheet, which has a million rows anyway.
          if (at + quantity < lines) this.step({ do: "lines", sheet: sheetId, axis: axes[dimension], at, by: quantity });
          break;
        }
        case "REMOVE_COLUMNS_ROWS": {
          const { sheetId, dimension, elements } = command;
          this.step(
            ...runs(elements).map(({ at, count }) => ({ do: "lines", sheet: sheetId, axis: axes[dimension], at, by: -count }) as const),
          );
          break;
        }
        case "MOVE_RANGES": {
          const { sheetId, target, targetSheetId, col, row } = command;
          const [{ top, left, bottom, right }] = target;
          this.step({ do: "block", sheet: sheetId, block: { top, left, bottom, right }, to: { sheet: targetSheetId, row, column: col } });
          break;
        }
        case "CREATE_SHEET":
          this.step({ do: "add", sheet: command.sheetId });
          break;
        case "DUPLICATE_SHEET":
          this.step({ do: "copy", sheet: command.sheetIdTo, from: command.sheetId });
          break;
        case "DELETE_SHEET":
          // What was made on it is gone with it, and the engine takes its pictures out one by one.
          this.update({ beyond: this.structure.beyond.filter(({ sheet }) => sheet !== command.sheetId) });
          this.step({ do: "remove", sheet: command.sheetId });
          break;
      }
    }

    override import(data: object): void {
      const { reached, ...structure } = structureOf(data);
      this.structure = structure;
      this.reached =
        reached &&
        Object.fromEntries(
          Object.entries(reached).map(([sheet, ranges]) => [sheet, Object.fromEntries(ranges.map((range) => [range, true]))]),
        );
    }

    override export(data: object): void {
      const reached =
        this.reached && Object.fromEntries(Object.entries(this.reached).map(([sheet, ranges]) => [sheet, Object.keys(ranges)]));
      Object.assign(data, { structure: { ...this.structure, reached } });
    }
  }
  registries.corePluginRegistry.add("structure of the file", StructurePlugin as never);
}

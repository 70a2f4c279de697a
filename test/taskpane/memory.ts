import type { Block, Call, Ended, Look, Selection, SheetHost, Work } from "../../shared/host";
import type { Cell } from "../../shared/outcome";
import { call, catalogue } from "../../src/catalogue";
import { LastCalls } from "../../src/excel/lastcall";

interface Filled {
  formula: string;
  value: Cell;
  format?: string;
}

/** A sheet without a spreadsheet: cells in a map, and every failure that a test may want. */
export class MemorySheet implements SheetHost {
  readonly name = "page";
  readonly cells = new Map<string, Filled>();
  readonly parts = new Map<string, string>();
  readonly ranges = new Map<string, readonly (readonly Cell[])[]>();
  readonly inserted: string[] = [];
  readonly printed: (readonly string[])[] = [];
  readonly calls = new LastCalls();
  selected = "Sheet1!B2";
  /** Words of the refusal of everything that writes; "" while all is well. */
  refuses = "";
  /** Milliseconds that a long piece of work takes. */
  lasts = 0;
  stopped = 0;
  private readonly watchers = new Set<() => void>();
  opening = false;

  readonly opensWithWorkbook = {
    get: () => Promise.resolve(this.opening),
    set: (on: boolean): Promise<Ended> => {
      if (!this.refuses) this.opening = on;
      return this.ended();
    },
  };

  private ended(words?: string): Promise<Ended> {
    return Promise.resolve(this.refuses ? { done: false, words: this.refuses } : { done: true, words });
  }

  select(address: string): void {
    this.selected = address;
    for (const changed of this.watchers) changed();
  }

  /** Calculates a cell as a spreadsheet would, one call in it. */
  calculate(address: string, formula: string, name: string, ...cells: (readonly (readonly Cell[])[] | undefined)[]): void {
    const answer = call(catalogue.find((one) => one.name === name)!, cells);
    const [value] = answer[0];
    this.cells.set(address, { formula, value: typeof value === "object" ? value.error : value });
    this.calls.settle();
    this.calls.record(address, { name, cells, answer } satisfies Call);
  }

  selection(): Promise<Selection | undefined> {
    const cell = this.cells.get(this.selected);
    const formula = cell?.formula ?? "";
    return Promise.resolve({
      address: this.selected,
      formula,
      row: 0,
      column: 0,
      calls: this.calls.at(this.selected, formula, cell?.value),
    });
  }

  watch(changed: () => void): () => void {
    this.watchers.add(changed);
    return () => this.watchers.delete(changed);
  }

  read(reference: string): Promise<readonly (readonly Cell[])[] | undefined> {
    const cell = this.cells.get(reference);
    return Promise.resolve(this.ranges.get(reference) ?? (cell && [[cell.value]]));
  }

  readonly blocks = new Map<string, Block>();

  contents(reference: string): Promise<Block | undefined> {
    return Promise.resolve(this.blocks.get(reference));
  }

  async put(blocks: readonly Block[]): Promise<Ended & { before?: readonly Block[] }> {
    if (this.refuses) return this.ended();
    return { done: true, before: blocks.map(({ at, cells }) => ({ at, cells: cells.map((row) => row.map(() => "")) })) };
  }

  write(formula: string, { formats }: Look, over: boolean): Promise<Ended & { filled?: boolean }> {
    if (this.refuses) return this.ended();
    if (this.cells.has(this.selected) && !over)
      return Promise.resolve({ done: false, filled: true, words: `${this.selected} holds something already.` });
    this.cells.set(this.selected, { formula, value: 0, format: formats[0] });
    return this.ended(`Formula inserted in ${this.selected}.`);
  }

  recalculate(): Promise<Ended> {
    return this.ended();
  }

  private async long({ progress, stop }: Work, words: string): Promise<Ended> {
    const until = Date.now() + this.lasts;
    while (Date.now() < until) {
      await new Promise((done) => setTimeout(done, 20));
      progress(1 - (until - Date.now()) / this.lasts);
      if (!stop.aborted) continue;
      this.stopped++;
      return { done: false, words: "Stopped: nothing was changed." };
    }
    return this.ended(words);
  }

  async insert(_file: Uint8Array, sheets: readonly string[], work: Work): Promise<Ended> {
    const ended = await this.long(work, `${sheets.length} sheets stand at the end.`);
    if (ended.done) this.inserted.push(...sheets);
    return ended;
  }

  open(): Promise<Ended> {
    return this.ended();
  }

  reenter(where: string, work: Work): Promise<Ended> {
    return this.long(work, `3 formulas put in again in the ${where}; 1 protected cell was left as it is.`);
  }

  copyWithValues(work: Work): Promise<Ended> {
    return this.long(work, "The copy is among your downloads.");
  }

  readPart(namespace: string): Promise<string | undefined> {
    return Promise.resolve(this.parts.get(namespace));
  }

  writePart(namespace: string, xml: string): Promise<Ended> {
    if (!this.refuses) this.parts.set(namespace, xml);
    return this.ended();
  }

  printSheet(_title: string, rows: readonly (readonly string[])[]): Promise<Ended> {
    if (!this.refuses) this.printed.push(...rows);
    return this.ended();
  }
}

import type { Ended } from "../../shared/host";
import { tried } from "./trouble";

type Batch<T> = (context: Excel.RequestContext) => Promise<T>;

const run = <T>(batch: Batch<T>): Promise<T> => Excel.run(batch);

/** Waits while a cell is being typed into. */
export const patiently = <T>(batch: Batch<T>): Promise<T> => Excel.run({ delayForCellEdit: true }, batch);

/** Undefined where Excel cannot answer: the pane says what to do instead. */
export const asked = <T>(batch: Batch<T>): Promise<T | undefined> => patiently(batch).catch(() => undefined);

export const doing = <E extends Ended>(batch: Batch<E>) => tried(() => run(batch));

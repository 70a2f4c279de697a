import type { Work } from "../shared/host";

/** A long operation under way: shown once it has taken half a second. */
export interface Running {
  readonly share: number;
  readonly visible: boolean;
  readonly stop: () => void;
}

const patience = 500;

/** Runs a long operation and reports its state; undefined when it is over. */
export async function run<T>(show: (running: Running | undefined) => void, task: (work: Work) => Promise<T>): Promise<T> {
  const halt = new AbortController();
  let running: Running = { share: 0, visible: false, stop: () => halt.abort() };
  const set = (change: Partial<Running>) => {
    running = { ...running, ...change };
    show(running);
  };
  set({});
  const timer = setTimeout(() => set({ visible: true }), patience);
  try {
    return await task({ progress: (share) => set({ share }), stop: halt.signal });
  } finally {
    clearTimeout(timer);
    show(undefined);
  }
}

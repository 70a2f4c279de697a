/** The right to change a workbook: one tab has it at a time. In a browser without the Web Locks API every tab has it. */
export interface Hold {
  release(): void;
}

const nameOf = (id: string) => `porewise workbook ${id}`;

/** Takes the right to change a workbook, at once or not at all; with a signal it waits until the right is free or the signal ends it. */
export function hold(id: string, wait?: AbortSignal): Promise<Hold | undefined> {
  const { locks } = navigator;
  if (!locks) return Promise.resolve({ release() {} });
  return new Promise((given) => {
    const held = (lock: Lock | null) => {
      if (!lock) return given(undefined);
      return new Promise<void>((release) => given({ release }));
    };
    locks.request(nameOf(id), wait ? { signal: wait } : { ifAvailable: true }, held).catch(() => given(undefined));
  });
}

/** Whether some tab has the right to change one of these workbooks. */
export async function isHeld(...ids: readonly string[]): Promise<boolean> {
  const names = new Set<string | undefined>(ids.map(nameOf));
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return held.some(({ name }) => names.has(name));
}

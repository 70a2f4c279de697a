/** The engine reports its progress on the console, which here belongs to the answers. */
export function quietly<T>(work: () => T): T {
  const { debug, group, groupEnd } = console;
  Object.assign(console, { debug() {}, group() {}, groupEnd() {} });
  try {
    return work();
  } finally {
    Object.assign(console, { debug, group, groupEnd });
  }
}

/** The engine reports its progress on the console. */
export function quietly<T>(work: () => T): T {
  const { debug } = console;
  console.debug = () => {};
  try {
    return work();
  } finally {
    console.debug = debug;
  }
}

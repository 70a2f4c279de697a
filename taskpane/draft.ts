/** What was typed and is not yet kept anywhere else: it outlives a reload of the pane, and nothing more. */

const prefix = "porewise:";

export function keepDraft(name: string, value: unknown): void {
  try {
    if (value === undefined) sessionStorage.removeItem(prefix + name);
    else sessionStorage.setItem(prefix + name, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing, or no more, still shows what was typed.
  }
}

/** What was kept under a name, as far as it still has the form that is asked for. */
export function draftOf<T>(name: string, read: (kept: unknown) => T | undefined): T | undefined {
  try {
    const kept = sessionStorage.getItem(prefix + name);
    return kept === null ? undefined : read(JSON.parse(kept));
  } catch {
    return undefined;
  }
}

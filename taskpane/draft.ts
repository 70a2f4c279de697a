/** What was typed and is not yet kept anywhere else: it outlives a reload of the pane, and nothing more. */

const prefix = "porewise:";

export function keepDraft(name: string, value: unknown): void {
  try {
    if (value === undefined) sessionStorage.removeItem(prefix + name);
    else sessionStorage.setItem(prefix + name, JSON.stringify(value));
  } catch {
    // Without room in session storage the field still shows what was typed.
  }
}

/** The draft kept under a name, if it still has the expected form. */
export function draftOf<T>(name: string, read: (kept: unknown) => T | undefined): T | undefined {
  try {
    const kept = sessionStorage.getItem(prefix + name);
    return kept === null ? undefined : read(JSON.parse(kept));
  } catch {
    return undefined;
  }
}

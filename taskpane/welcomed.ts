const keptName = "porewise:welcomed";

/** Whether this browser has not shown its first words yet; one that keeps nothing is not asked again and again. */
export function isFirstRun(): boolean {
  try {
    return localStorage.getItem(keptName) === null;
  } catch {
    return false;
  }
}

export function welcomed(): void {
  try {
    localStorage.setItem(keptName, "yes");
  } catch {
    // Then it is shown once more.
  }
}

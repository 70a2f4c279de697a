const keptName = "porewise:welcomed";

/** Whether the welcome is still to be shown in this browser; without local storage it is not shown. */
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
    // Without local storage the welcome shows once more.
  }
}

/** Fails with all three numbers named. `off` is absolute: half the source's last digit, or what the source claims. */
export function within(actual: unknown, expected: number, off: number): void {
  if (typeof actual !== "number" || !(Math.abs(actual - expected) <= off))
    throw new Error(`${JSON.stringify(actual)} is not within ${off} of ${expected}`);
}

/** The same for an allowance relative to the expected value. */
export const near = (actual: unknown, expected: number, relative = 1e-9): void => within(actual, expected, Math.abs(expected) * relative);

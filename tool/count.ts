/** How a run of checks ended. */
export interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export const none: Count = { passed: 0, failed: 0, skipped: 0 };

export const add = (a: Count, b: Count): Count => ({
  passed: a.passed + b.passed,
  failed: a.failed + b.failed,
  skipped: a.skipped + b.skipped,
});

/** What jest reports that is counted here. */
export interface JestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  /** Suites that failed to run: none of their tests is in the other numbers. */
  readonly numRuntimeErrorTestSuites: number;
}

/** A run that left no report, ran nothing, or ended badly without a failed test, counts as one failure. */
export function countJest(report: JestReport | undefined, ended: boolean): Count {
  if (!report) return { ...none, failed: 1 };
  const passed = report.numPassedTests;
  const skipped = report.numPendingTests + report.numTodoTests;
  const failed = report.numFailedTests + report.numRuntimeErrorTestSuites;
  const lacking = !failed && (!ended || passed + skipped === 0);
  return { passed, failed: failed + (lacking ? 1 : 0), skipped };
}

/** The line a run ends with. */
export const closing = ({ passed, failed, skipped }: Count): string =>
  `${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`;

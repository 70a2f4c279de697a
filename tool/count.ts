import { join, sep } from "node:path";

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
  readonly testResults?: readonly {
    /** The file's path. */
    readonly name: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
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

interface Project {
  readonly displayName: string;
  /** As jest has them, with `<rootDir>` for the project's folder. */
  readonly roots: readonly string[];
}

/** What each project of a run gave, and how long its files took together. */
export function byProject({ testResults = [] }: JestReport, projects: readonly Project[], rootDir: string) {
  return projects.flatMap(({ displayName: name, roots }) => {
    const folders = roots.map((folder) => join(folder.replace("<rootDir>", rootDir), sep));
    const files = testResults.filter((file) => folders.some((folder) => file.name.startsWith(folder)));
    if (!files.length) return [];
    const tests = files.flatMap(({ assertionResults }) => assertionResults);
    const passed = tests.filter(({ status }) => status === "passed").length;
    const failed = tests.filter(({ status }) => status === "failed").length;
    const unrun = files.filter(({ status, assertionResults }) => status === "failed" && !assertionResults.length).length;
    const seconds = files.reduce((sum, { startTime, endTime }) => sum + (endTime - startTime) / 1000, 0);
    return [{ name, count: { passed, failed: failed + unrun, skipped: tests.length - passed - failed }, seconds }];
  });
}

/** The line a run ends with. */
export const closing = ({ passed, failed }: Count): string => `${passed} passed, ${failed} failed`;

import { add, byProject, closing, countJest } from "../../tool/count";

const report = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, numRuntimeErrorTestSuites: 0 };

it.each([
  { ran: "all well", given: { ...report, numPassedTests: 5 }, ended: true, is: { passed: 5, failed: 0, skipped: 0 } },
  { ran: "one failed", given: { ...report, numPassedTests: 4, numFailedTests: 1 }, ended: false, is: { passed: 4, failed: 1, skipped: 0 } },
  {
    ran: "a suite that does not run",
    given: { ...report, numPassedTests: 4, numRuntimeErrorTestSuites: 1 },
    ended: false,
    is: { passed: 4, failed: 1, skipped: 0 },
  },
  {
    ran: "skipped and to do",
    given: { ...report, numPassedTests: 1, numPendingTests: 2, numTodoTests: 1 },
    ended: true,
    is: { passed: 1, failed: 0, skipped: 3 },
  },
  { ran: "no report", given: undefined, ended: true, is: { passed: 0, failed: 1, skipped: 0 } },
  { ran: "no test", given: report, ended: true, is: { passed: 0, failed: 1, skipped: 0 } },
  {
    ran: "a bad end without a failed test",
    given: { ...report, numPassedTests: 3 },
    ended: false,
    is: { passed: 3, failed: 1, skipped: 0 },
  },
])("$ran", ({ given, ended, is }) => expect(countJest(given, ended)).toEqual(is));

it("adds up, and ends in passed and failed alone", () =>
  expect(closing(add({ passed: 2, failed: 0, skipped: 1 }, { passed: 1, failed: 1, skipped: 0 }))).toBe("3 passed, 1 failed"));

it("tells each project's share of a run, with the files that did not run", () => {
  const file = (name: string, seconds: number, ...statuses: string[]) => ({
    ...{ name, startTime: 1000, endTime: 1000 + seconds * 1000, status: statuses.includes("passed") ? "passed" : "failed" },
    assertionResults: statuses.map((status) => ({ status })),
  });
  const testResults = [
    file("/a/test/one/x.test.ts", 2, "passed", "failed", "pending"),
    file("/a/test/one/deep/y.test.ts", 1),
    file("/a/test/two/z.test.ts", 4, "passed"),
  ];
  const projects = ["one", "two", "three"].map((displayName) => ({ displayName, roots: [`<rootDir>/test/${displayName}`] }));
  expect(byProject({ ...report, testResults }, projects, "/a")).toEqual([
    { name: "one", count: { passed: 1, failed: 2, skipped: 1 }, seconds: 3 },
    { name: "two", count: { passed: 1, failed: 0, skipped: 0 }, seconds: 4 },
  ]);
});

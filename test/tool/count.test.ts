import { add, closing, countJest, none } from "../../tool/count";

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

it("adds up, and speaks of skipped tests only where there are some", () => {
  expect(closing(add({ passed: 2, failed: 0, skipped: 0 }, { passed: 1, failed: 1, skipped: 0 }))).toBe("3 passed, 1 failed");
  expect(closing(add(none, { passed: 2, failed: 0, skipped: 1 }))).toBe("2 passed, 0 failed, 1 skipped");
});

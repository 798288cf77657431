import { expect, test } from "vitest";
import { countProcesses, judgeRun, table } from "#infra/build/report.ts";

const report = (change: object = {}): string =>
  JSON.stringify({ numPassedTests: 5, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [], ...change });

test("a good run counts what passed", () => {
  expect(judgeRun(report(), 0)).toEqual({ passed: 5, failed: 0, note: "" });
});

test("nothing that did not run looks like something that passed", () => {
  expect(judgeRun(undefined, 0).failed).toBe(1);
  expect(judgeRun(report({ numPassedTests: 0 }), 0)).toMatchObject({ failed: 1, note: "no test" });
  expect(judgeRun(report({ numPendingTests: 2 }), 0)).toMatchObject({ failed: 2, note: "2 skipped" });
  expect(judgeRun(report({ numTodoTests: 1 }), 0)).toMatchObject({ failed: 1 });
  expect(judgeRun(report(), 1)).toMatchObject({ failed: 1, note: "an error outside the tests" });
  expect(judgeRun(report({ testResults: [{ name: "a", status: "failed", assertionResults: [] }] }), 1)).toMatchObject({
    failed: 1,
    note: "1 files broken",
  });
});

test("processes are counted by name", () => {
  const counts = countProcesses('{"name":"store","pid":1}\n{"name":"workerd","pid":2}\n{"name":"store","pid":3}\n');
  expect([...counts]).toEqual([
    ["store", 2],
    ["workerd", 1],
  ]);
});

test("the table keeps its columns", () => {
  expect(
    table([
      { name: "unit", passed: 12, failed: 0, seconds: 1.25, note: "" },
      { name: "functions", passed: 3, failed: 1, seconds: 10, note: "1 skipped" },
    ]),
  ).toBe("unit          12 passed    0 failed     1.3 s\nfunctions      3 passed    1 failed    10.0 s  1 skipped");
});

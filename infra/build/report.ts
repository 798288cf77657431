/** One line of the table at the end of a test run. */
export interface Line {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
  readonly seconds: number;
  readonly note: string;
}

/** The processes of a run by name, from the lines that each start wrote. */
export const countProcesses = (text: string): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const line of text.split("\n")) {
    if (line.trim() === "") continue;
    const { name } = JSON.parse(line) as { name: string };
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
};

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly { readonly name: string; readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/**
 * What a vitest run comes to. A file that broke before its first test counts as one failed; so do a run without a
 * report, a run without any test, and every skipped test: nothing that did not run may look like something that passed.
 */
export const judgeRun = (
  json: string | undefined,
  code: number,
): { readonly passed: number; readonly failed: number; readonly note: string } => {
  if (json === undefined) return { passed: 0, failed: 1, note: "did not run" };
  const report = JSON.parse(json) as VitestReport;
  const skipped = report.numPendingTests + report.numTodoTests;
  const brokenFiles = report.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  ).length;
  const passed = report.numPassedTests;
  let failed = report.numFailedTests + brokenFiles + skipped;
  const notes: string[] = [];
  if (brokenFiles > 0) notes.push(`${brokenFiles} files broken`);
  if (skipped > 0) notes.push(`${skipped} skipped`);
  if (passed + failed === 0) notes.push("no test");
  else if (failed === 0 && code !== 0) notes.push("an error outside the tests");
  if (failed === 0 && (code !== 0 || passed === 0)) failed = 1;
  return { passed, failed, note: notes.join(", ") };
};

/** The table, its columns under one another. */
export const table = (lines: readonly Line[]): string => {
  const width = Math.max(...lines.map(({ name }) => name.length));
  return lines
    .map(({ name, passed, failed, seconds, note }) =>
      `${name.padEnd(width)}  ${String(passed).padStart(5)} passed  ${String(failed).padStart(3)} failed  ${seconds.toFixed(1).padStart(6)} s  ${note}`.trimEnd(),
    )
    .join("\n");
};

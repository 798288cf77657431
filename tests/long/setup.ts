import { afterEach, beforeEach, vi } from "vitest";
import { begin, end, type Long, ran } from "./ran.ts";

/**
 * The property tests of the unit project, unchanged, with as many runs as fit into a few seconds each instead of the hundred or few
 * thousand that a quick run can spend.
 */
const SECONDS_EACH = 3;
const MOST_RUNS = 5_000_000;

vi.mock("fast-check", async (original) => {
  const actual = await original<typeof import("fast-check")>();
  const long: Long = (property, parameters = {}) => {
    const finish = (details: Awaited<ReturnType<typeof actual.check>>): void => {
      ran(details.numRuns);
      if (details.failed) throw new Error(actual.defaultReportMessage(details) ?? "a property failed");
    };
    const asked = {
      ...parameters,
      numRuns: Math.max(parameters.numRuns ?? 0, MOST_RUNS),
      interruptAfterTimeLimit: SECONDS_EACH * 1000,
      markInterruptAsFailure: false,
    };
    const found = actual.check(property as never, asked as never) as unknown;
    return found instanceof Promise ? found.then(finish) : finish(found as Awaited<ReturnType<typeof actual.check>>);
  };
  return { ...actual, assert: long, default: { ...actual.default, assert: long } };
});

beforeEach(begin);
afterEach(({ task }) => {
  task.meta.long = end();
});

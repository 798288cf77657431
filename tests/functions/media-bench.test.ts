import { expect, it } from "vitest";
import { compared, holds, type Line, table } from "#infra/bench/line.ts";
import { mediaMemory } from "#infra/bench/media-memory.ts";
import { mediaTime } from "#infra/bench/media-time.ts";
import { median, medians } from "#infra/bench/medians.ts";

// That the bench runs and reckons right, at sizes at which its limits mean nothing; the figures are those of `npm run bench`.

it("S12 times and memory are measured, each ratio with its limit", async () => {
  const lines = [
    ...(await mediaTime({ rounds: 1, warm: 0, across: 1, down: 1 })),
    ...(await mediaMemory({ width: 640, height: 480, first: 2, last: 4 })),
  ];
  expect(lines.map(({ atMost, unit }) => [atMost, unit])).toEqual([
    [0.75, "ms"],
    [1.3, "ms"],
    [2, "ms"],
    [1.1, "MB"],
  ]);
  for (const { ours, beside } of lines) {
    expect(ours).toBeGreaterThan(0);
    expect(beside).toBeGreaterThan(0);
  }
  // A process with the image library in it, which has read four small photos.
  expect(lines[3]?.ours).toBeGreaterThan(50);
  expect(lines[3]?.ours).toBeLessThan(1_000);
});

it("the ways take turns, and no round begins with the same one as the last", async () => {
  const order: string[] = [];
  const way = (name: "a" | "b" | "c") => ({ name, run: async () => void order.push(name) });
  const took = await medians([way("a"), way("b"), way("c")], 3, 4);
  expect(order.slice(-9).join("")).toBe("bcacababc");
  expect(Object.keys(took)).toEqual(["a", "b", "c"]);
});

it("a median is the middle one, or the mean of the middle two", () => {
  expect([median([5]), median([9, 1, 2]), median([4, 1, 3, 100])]).toEqual([5, 2, 3.5]);
  expect(() => median([])).toThrow(RangeError);
});

it("a limit holds when it is met, and a line that does not keep it says so", () => {
  const kept = compared("kept", { time: 150, work: 90 }, { time: 200, work: 100 }, 0.75);
  const missed: Line = { what: "missed", unit: "MB", ours: 111, beside: 100, atMost: 1.1 };
  expect([holds(kept), holds(missed)]).toEqual([true, false]);
  expect(table([kept, missed]).split("\n")).toEqual([
    "what      ours  beside  ratio  at most  in work",
    "kept    150 ms  200 ms  0.750     0.75    0.900  kept",
    "missed  111 MB  100 MB  1.110     1.10           NOT KEPT",
  ]);
});

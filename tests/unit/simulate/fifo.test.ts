import { expect, test } from "vitest";
import { type Chance, chanceFrom } from "#infra/chance/index.ts";
import { Fifo, type Waits } from "#infra/simulate/fifo.ts";

// Closed forms of the wait before service begins, from R. B. Cooper, Introduction to Queueing Theory, 2nd edition (1981): Pollaczek and
// Khinchine's formula for one server (p. 189), Erlang's delay formula for several (section 3.4). Compared with the mean of independent runs,
// within four of their standard errors; the error itself must be small, else anything would pass.

const RUNS = 20;
const EACH = 60_000;
/** One piece of work takes a millisecond on average, so that a run lies within the first hour. */
const SERVICE = 1;

const exponential = (chance: Chance, mean: number): number => -mean * Math.log(1 - chance.next());

function runs(servers: number, use: number, takes: (chance: Chance) => number): readonly Waits[] {
  return Array.from({ length: RUNS }, (_, seed) => {
    const chance = chanceFrom(seed + 1);
    const fifo = new Fifo(servers);
    let now = 0;
    for (let n = 0; n < EACH; n += 1) {
      now += exponential(chance, SERVICE / use / servers);
      fifo.served(now, takes(chance));
    }
    const { hour, waits } = fifo.busiest();
    expect([hour, waits.count]).toEqual([0, EACH]);
    return waits;
  });
}

function meanAndError(values: readonly number[]): readonly [number, number] {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return [mean, Math.sqrt(variance / values.length)];
}

function agrees(values: readonly number[], expected: number, bin = 0): void {
  const [mean, error] = meanAndError(values);
  expect(error).toBeLessThan(0.02 * expected);
  expect(Math.abs(mean - expected)).toBeLessThan(4 * error + bin * expected);
}

test("M/D/1: the mean wait is use / (2 (1 - use)) services", () => {
  for (const use of [0.5, 0.8])
    agrees(
      runs(1, use, () => SERVICE).map(({ mean }) => mean),
      use / (2 * (1 - use)),
    );
});

test("M/M/1: mean use / (1 - use), and P(W > t) = use exp(-(1 - use) t) for what 95 and 99 of 100 do not pass", () => {
  const use = 0.7;
  const all = runs(1, use, (chance) => exponential(chance, SERVICE));
  agrees(
    all.map(({ mean }) => mean),
    use / (1 - use),
  );
  // to a bin of 4 %
  agrees(
    all.map(({ p95 }) => p95),
    Math.log(use / 0.05) / (1 - use),
    0.04,
  );
  agrees(
    all.map(({ p99 }) => p99),
    Math.log(use / 0.01) / (1 - use),
    0.04,
  );
});

test("M/M/2: Erlang's delay formula", () => {
  const use = 0.75;
  // a = 1.5 Erlang on two servers: C = (a²/2 / (1 - use)) / (1 + a + a²/2 / (1 - use)) = 4.5 / 7 = 9/14
  const delayed = 9 / 14;
  // C / (2 (1 - use))
  agrees(
    runs(2, use, (chance) => exponential(chance, SERVICE)).map(({ mean }) => mean),
    delayed / (2 * (1 - use)),
  );
});

test("three that come at once to one server wait none, one and two services; use is the hour's share", () => {
  const fifo = new Fifo(1);
  expect([fifo.served(0, 600_000), fifo.served(0, 600_000), fifo.served(0, 600_000)]).toEqual([600_000, 1_200_000, 1_800_000]);
  const { use, waits } = fifo.busiest();
  expect([use, waits.mean]).toEqual([0.5, 600_000]);
});

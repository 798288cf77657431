import { spawn } from "node:child_process";
import { describe, expect, it } from "vitest";
import { findings, jobLedgerOf, jobState } from "#core/job/index.ts";
import { core } from "#infra/bench/core.ts";
import { beside, holds, type Line, table } from "#infra/bench/line.ts";
import { medians } from "#infra/bench/medians.ts";
import { peakOf } from "#infra/bench/resident.ts";
import { courtyardLedger } from "#infra/demo/without-stack.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

// That the benches measure what they say; their figures are those of `npm run bench`.

describe("the job that is judged and verified", () => {
  it("has as many entries as asked for, chained so that another verifier finds no fault, and is judged", async () => {
    const ledger = await courtyardLedger(300);
    expect(ledger.entries).toHaveLength(300);
    expect(verifyLedger(JSON.stringify(ledger)).faults).toEqual([]);
    const all = findings(jobState(jobLedgerOf(ledger)));
    const verdicts = new Set(all.map(({ verdict }) => verdict));
    expect([verdicts.has("within"), verdicts.has("outside"), all.length > 100]).toEqual([true, true, true]);
  });

  it("is measured beside its limits", async () => {
    const lines = await core({ entries: 180, rounds: 1, warm: 0 });
    expect(lines.map(({ beside, atMost }) => [beside === 3, atMost])).toEqual([
      [true, 1],
      [false, 1.3],
    ]);
    for (const { ours, beside } of lines) expect(Math.min(ours, beside)).toBeGreaterThan(0);
  });
});

describe("lines", () => {
  it("without a limit are said and fail nothing; a count of refusals holds at none alone", () => {
    const said: Line = { what: "file", unit: "kB", ours: 3000, beside: 1500 };
    const refused = (ours: number): Line => ({ what: "refused", unit: "refused", ours, beside: 1, atMost: 0 });
    expect([holds(said), holds(refused(0)), holds(refused(1))]).toEqual([true, true, false]);
    const quick = beside("append", { time: 4.55, work: 1 }, { time: 4, work: 1 }, 1.25);
    expect(table([said, quick]).split("\n")).toEqual([
      "what       ours   beside  ratio  at most  in work",
      "file    3000 kB  1500 kB  2.000                    said",
      "append   4.5 ms   4.0 ms  1.137     1.25           kept",
    ]);
  });

  it("what a way leaves behind is waited for before the next, and is not in its time", async () => {
    const order: string[] = [];
    const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
    const left = async () => {
      await pause(60);
      order.push("settled");
    };
    const took = await medians(
      [
        { name: "a", run: async () => void order.push("a"), settle: left },
        { name: "b", run: async () => void order.push("b") },
      ],
      2,
      0,
    );
    expect(order).toEqual(["a", "settled", "b", "b", "a", "settled"]);
    expect(took.a.time).toBeLessThan(50);
  });
});

it("memory is that of a process and of what descends from it, at its peak", async () => {
  // a process of its own: the heap of the one that runs all unit tests shrinks when it likes
  const program =
    "process.stdin.once('data', () => { globalThis.held = Buffer.alloc(150_000_000, 1); console.log('held'); }); console.log('up')";
  const child = spawn(process.execPath, ["--eval", program], { stdio: ["pipe", "pipe", "inherit"] });
  const said = (): Promise<string> => new Promise((resolve) => child.stdout.once("data", (words) => resolve(String(words).trim())));
  try {
    expect(await said()).toBe("up");
    const looking = peakOf(child.pid as number);
    await new Promise((resolve) => setTimeout(resolve, 1_000));
    child.stdin.write("now\n");
    expect(await said()).toBe("held");
    const { before, peak } = await looking.end();
    expect(before).toBeGreaterThan(5);
    // 150 MB are 143 of 1,048,576 bytes
    expect(peak - before).toBeGreaterThan(130);
    expect(peak - before).toBeLessThan(200);
  } finally {
    child.kill("SIGKILL");
  }
}, 20_000);

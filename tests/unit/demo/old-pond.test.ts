import { beforeAll, describe, expect, test } from "vitest";
import { type Clearance, clearances, type Finding, findings, handingOver, type JobState } from "#core/job/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { oldPond } from "#infra/demo/old-pond.ts";
import { scriptedJob } from "../../helpers/scripted-job.ts";

const INCH = 25_400;
let state: JobState;
let found: readonly Finding[];
let coverings: readonly Clearance[];
beforeAll(async () => {
  state = await scriptedJob(oldPond);
  found = findings(state);
  coverings = clearances(state, found, Date.UTC(2026, 5, 1));
});
const finding = (check: string, tag?: string): Finding | undefined => found.find((one) => one.check === check && one.tag === tag);

describe("the demo's job by the second tolerance sheet", () => {
  test("every covering was done on a clear, in the order of the work, and none is doubted since", () => {
    expect(coverings.map(({ covering, state: now, covered }) => [covering, now, covered?.shown, covered?.laterDoubted])).toEqual(
      ["fill-old-hole", "build-over-fill", "backfill-basin", "fill-trench", "stone-over-basin"].map((covering) => [
        covering,
        "clear",
        "clear",
        false,
      ]),
    );
    const times = coverings.map(({ covered }) => covered?.at ?? 0);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  test("the second layer of the fill was compacted again: 2 1/4 in could not be told from 2 in, 1/2 in is within", () => {
    // U of one tape reading on rough fill is 2 × 7.35 mm = 0.58 in: 2 1/4 ± 0.58 holds 2; 1/2 ± 0.58 lies under it
    expect(finding("fill-firm", "2")).toMatchObject({
      verdict: "within",
      value: INCH / 2,
      beforeRework: [{ value: 2.25 * INCH, verdict: "too close to call" }],
    });
    expect(finding("fill-settled")).toMatchObject({ verdict: "within", value: 0.375 * INCH });
  });

  test("the wiring nobody knew was told at last; fish, kept parts and both languages print", () => {
    expect(finding("wiring-known")).toMatchObject({ verdict: "within" });
    expect(finding("fish-held")).toMatchObject({ verdict: "within" });
    expect(state.tags.filter(({ set }) => set === "kept-part")).toHaveLength(2);
    const sheet = state.sheet;
    if (sheet === undefined) throw new Error("no sheet");
    const says = (["en", "es"] as const).map((language) => {
      const sayer = makeSayer({ language, units: "inch", zone: "America/Chicago", sheet });
      return found.map((one) => String(sayer.finding(one)));
    });
    expect(says[0]?.every((sentence, i) => sentence !== "" && sentence !== says[1]?.[i])).toBe(true);
  });

  test("nothing reads outside or too close to call, but for what was worked over again", () => {
    expect(
      found.filter(({ verdict }) => verdict === "outside" || verdict === "too close to call").map(({ check, tag }) => [check, tag]),
    ).toEqual([]);
  });

  test("what is missing at handing over is what the crew left out and nothing that holds", () => {
    const { missing } = handingOver(state, found, Date.UTC(2026, 5, 1));
    expect(missing.map(({ about }) => about.item ?? about.check).sort()).toEqual([
      "height-mark-picture",
      "outlet-with-lid",
      "running-conditions",
      "running-day-end",
      "running-day-start",
      "site-second-side",
    ]);
    expect(found.filter(({ weight, verdict }) => weight === "holds" && verdict !== "within").map(({ check }) => check)).toEqual([]);
  });
});

import { describe, expect, it } from "vitest";
import { besides, type JobPictures } from "#core/screens/office/side-by-side/choices.ts";
import { byKey, MOST_TIMES, moved, type Near, nearer, whole } from "#core/screens/office/side-by-side/near.ts";
import type { PictureShown } from "#core/screens/parts/pictures.ts";

/** The spot of the picture (in shares of it) that stands at a spot of the frame. */
const seenAt = ({ times, x, y }: Near, spot: { x: number; y: number }) => [(spot.x - x) / times, (spot.y - y) / times];

describe("two frames that are enlarged as one", () => {
  it("keep under the pointer what lay under it", () => {
    const spot = { x: 0.25, y: 0.75 };
    const twice = nearer(whole, 2, spot);
    // twice as large: a quarter to the right stays at a quarter, so the corner goes a quarter out
    expect(twice).toEqual({ times: 2, x: -0.25, y: -0.75 });
    const more = nearer(twice, 1.7, spot);
    expect(seenAt(more, spot)[0]).toBeCloseTo(0.25, 12);
    expect(seenAt(more, spot)[1]).toBeCloseTo(0.75, 12);
  });

  it("never show less than the whole picture, nor what lies beside it", () => {
    expect(nearer(whole, 0.2)).toEqual(whole);
    expect(nearer(whole, 1000).times).toBe(MOST_TIMES);
    const twice = nearer(whole, 2);
    expect(moved(twice, 9, 9)).toEqual({ times: 2, x: 0, y: 0 });
    expect(moved(twice, -9, -9)).toEqual({ times: 2, x: -1, y: -1 });
    expect(moved(whole, 0.3, -0.3)).toEqual(whole);
    // back from a corner: the frame stays full
    expect(nearer(moved(twice, -9, -9), 0.75, { x: 0, y: 0 })).toEqual({ times: 1.5, x: -0.5, y: -0.5 });
  });

  it("do the same from the keyboard", () => {
    const near = byKey(whole, "+") ?? whole;
    expect(near.times).toBe(1.5);
    expect(byKey(near, "ArrowRight")?.x).toBeCloseTo(near.x - 0.1, 12);
    expect(byKey(near, "ArrowDown")?.y).toBeCloseTo(near.y - 0.1, 12);
    expect(byKey(near, "0")).toEqual(whole);
    expect(byKey(near, "-")?.times).toBeCloseTo(1, 12);
    expect([byKey(near, "a"), byKey(near, "toString")]).toEqual([undefined, undefined]);
  });
});

describe("what stands beside a picture", () => {
  const picture = (entry: string, photo: string, step: string): PictureShown =>
    ({ entry, photo, step, title: entry, at: 0, address: `/api/photos/${photo}/screen`, caption: "" }) as unknown as PictureShown;
  const [own, same, sameStep] = [picture("own", "aa", "one"), picture("same", "bb", "two"), picture("of the step", "cc", "one")];
  const facts = ["own", "same", "of the step"].map((id) => ({ id, what: { item: id } }));
  const job = { now: { state: { facts } }, sayer: { moment: () => "" }, pictures: [own, sameStep, same] } as unknown as JobPictures;
  const seen = (sha256: string, jobs: readonly string[]) => ({ sha256, usedIn: jobs.map((id) => ({ job: id, made: null })) });
  const pair = (one: ReturnType<typeof seen>, before: ReturnType<typeof seen>) =>
    ({ photo: one, before, how: "likeness", distance: 3, turn: 1, weight: "alarm", found: 0 }) as const;

  it("first what shows the same, here and in other jobs, which it names; then the step's others", () => {
    const pairs = [pair(seen("aa", ["here"]), seen("bb", ["here"])), pair(seen("dd", ["there", "and there"]), seen("aa", ["here"]))];
    expect(besides(job, own, pairs).map(({ key, why, jobs }) => ({ key, why, ...(jobs && { jobs }) }))).toEqual([
      { key: "same", why: "beside-why-alike" },
      { key: "dd", why: "beside-why-elsewhere", jobs: ["there", "and there"] },
      { key: "of the step", why: "beside-why-step" },
    ]);
    expect(besides(job, own, []).map(({ key }) => key)).toEqual(["of the step", "same"]);
  });
});

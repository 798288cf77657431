import { describe, expect, test } from "vitest";
import type { FourSpots, SeenCorner } from "#core/geometry/index.ts";
import { type CardFor, cardText, photoMeasured } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { CardPaper, CardPlace } from "#core/photo/index.ts";
import type { CodeSeen } from "#core/screens/field/cards/seen.ts";
import { cardInPhoto, thousandths } from "#core/screens/field/measure/card-in-photo.ts";
import { lensOf } from "#core/screens/field/measure/lens-kept.ts";
import { judgedForLens, type LensPhoto, lensBy, WELL_KNOWN } from "#core/screens/field/measure/lens-photos.ts";
import { rulerTyped } from "#core/screens/field/measure/ruler-kept.ts";
import { measuredWhat } from "#core/screens/field/measure/what.ts";
import { readWhat } from "#core/wire/index.ts";
import { digest } from "#infra/node-digest.ts";
import { codesSeen, height, seenFrom, type View, width } from "../../helpers/card-seen.ts";

const here = { company: "company-1", job: "job-1", steps: ["dig", "set"] };
const view: View = { tilt: 0.3, away: 0.8, right: 0.1, down: -0.05, k: 0.002 };
const places = [0, 1, 2, 3] as const;

async function codesOf(card: CardFor, of: readonly CardPlace["place"][] = places, paper: CardPaper = "letter"): Promise<CodeSeen[]> {
  const seen = codesSeen(view, 0.1);
  return Promise.all(
    of.map(async (place): Promise<CodeSeen> => {
      const text = await cardText(digest, card, { paper, place });
      return { text: text.ok ? text.value : "", corners: seen[place]?.corners as FourSpots<SeenCorner> };
    }),
  );
}
const found = (codes: readonly CodeSeen[]) => cardInPhoto(digest, { is: "looked", width, height, codes }, here);

describe("the card in a picture", () => {
  test("of this job, for one of its steps or for any: its codes in their order, corners in thousandths, doubts rounded up", async () => {
    const own = await codesOf({ company: "company-1", job: "job-1", step: "set" }, [2, 0]);
    expect(await found(own)).toMatchObject({ is: "card", paper: "letter", width, height, codes: [{ place: 0 }, { place: 2 }] });
    expect(await found(own)).toHaveProperty("step", "set");
    const any = await found(await codesOf({ company: "company-1", job: "job-1" }));
    expect(any.is === "card" && any.codes.map(({ place }) => place)).toEqual([0, 1, 2, 3]);
    expect(any).not.toHaveProperty("step");
    expect(thousandths({ x: 12.3456, y: 0.0004, u: 0.1001 })).toEqual([12_346, 0, 101]);
    expect(thousandths({ x: 1, y: 1, u: 0 })[2]).toBe(1);
  });

  test("no card, another job's, another company's, one that was altered, two of them, and no look at all", async () => {
    const own = await codesOf({ company: "company-1", job: "job-1" });
    const others = await codesOf({ company: "company-1", job: "job-2" });
    const foreign = await codesOf({ company: "company-2", job: "job-1" });
    const altered = own.map(({ text, corners }) => ({ text: `${text.slice(0, -1)}${text.endsWith("0") ? "1" : "0"}`, corners }));
    const stray: CodeSeen = { text: "a word on a bag of stone", corners: (own[0] as CodeSeen).corners };
    expect(await found([])).toEqual({ is: "none" });
    expect(await found([stray])).toEqual({ is: "none" });
    expect(await found(others)).toEqual({ is: "another job" });
    expect(await found(foreign)).toEqual({ is: "another company" });
    expect(await found(altered)).toEqual({ is: "not read" });
    expect(await found([...own, ...own])).toEqual({ is: "several" });
    expect(await found([...own, ...others])).toEqual({ is: "several" });
    expect(await found([...own, ...(await codesOf({ company: "company-1", job: "job-1" }, places, "a4"))])).toEqual({ is: "several" });
    expect((await found([...own, stray])).is).toBe("card");
    expect(await cardInPhoto(digest, { is: "not looked" }, here)).toEqual({ is: "not looked" });
  });

  test("with two ends it is an entry of the wire's shape, and as long as it is: 300 mm on the sheet", async () => {
    const card = await found(await codesOf({ company: "company-1", job: "job-1" }));
    if (card.is !== "card") throw new Error("no card");
    const ends = [
      { ...seenFrom(view, { x: -50_000, y: 100_000 }), u: 0.5 },
      { ...seenFrom(view, { x: 250_000, y: 100_000 }), u: 0.25 },
    ] as const;
    const lens = lensOf({ distortion: 2000, within: 300, long: width, short: height, at: 0, photos: 4 }, card);
    const ruler = rulerTyped("letter", "10 0/16", "in");
    if (ruler === "coarse" || !ruler.ok) throw new Error("no ruler");
    const what = measuredWhat({ item: "width", tag: "A" }, { photo: "a".repeat(64), card, ends: [...ends], ruler: ruler.value, lens });
    expect(what).toMatchObject({
      item: "width",
      tag: "A",
      lens: { distortion: 2000, within: 300 },
      ruler: { typed: "10 0/16", unit: "in" },
    });
    expect(readWhat("photo-measured", what as unknown as Json, "what").ok).toBe(true);
    const measured = photoMeasured(what);
    if (!measured.ok) throw new Error(measured.refusal.code);
    const { micrometres, doubt } = measured.value.length;
    expect(Math.abs(micrometres - 300_000)).toBeLessThan(doubt);
    expect(doubt).toBeLessThan(3000);
  });
});

describe("the card's ruler", () => {
  test("typed to the tape's marks; without them, or of another ruler, it is not taken", () => {
    expect(rulerTyped("letter", "10 1/16", "in")).toEqual({ ok: true, value: { typed: "10 1/16", unit: "in" } });
    expect(rulerTyped("a4", "254", "mm")).toMatchObject({ ok: true });
    // 10 in to the inch: half an inch either way is 5 %
    expect(rulerTyped("letter", "10", "in")).toBe("coarse");
    expect(rulerTyped("letter", "12 0/16", "in")).toMatchObject({ ok: false, refusal: { code: "reading-out-of-range" } });
    expect(rulerTyped("letter", "ten", "in")).toMatchObject({ ok: false });
  });
});

describe("the phone's lens", () => {
  const lens = { distortion: 4100, within: 300, long: 4000, short: 3000, at: 0, photos: 5 };

  test("is that of pictures of its size, whichever way the phone was held, and of no others", () => {
    expect(lensOf(lens, { width: 4000, height: 3000 })).toEqual({ distortion: 4100, within: 300 });
    expect(lensOf(lens, { width: 3000, height: 4000 })).toEqual({ distortion: 4100, within: 300 });
    expect(lensOf(lens, { width: 4000, height: 2250 })).toBeUndefined();
    expect(lensOf(lens, { width: 4032, height: 3024 })).toBeUndefined();
    expect(lensOf(undefined, { width: 4000, height: 3000 })).toBeUndefined();
  });

  const texts = places.map((place) => `AB1${"ABCD"[place]}7F3K0042A01K9QXY`);
  const seen = (of: View, size = { width, height }, heightAt?: Parameters<typeof codesSeen>[3]) => ({
    is: "looked" as const,
    ...size,
    codes: codesSeen(of, 0.05, undefined, heightAt).map(({ corners }, i) => ({ text: texts[i] ?? "", corners })),
  });
  /** Near, and off the picture's middle: there a lens bends most. */
  const near = (right: number, down: number, tilt: number): View => ({ tilt, away: 0.5, right, down, k: 0.004 });

  test("three photos of a flat card in three corners tell a lens of 0.4 % so well that it adds little to a length; two do not", () => {
    const judge = (photos: readonly LensPhoto[], of: View): readonly LensPhoto[] => [
      ...photos,
      judgedForLens(String(photos.length), seen(of), photos),
    ];
    const two = [near(0.18, 0.1, 0.1), near(-0.18, 0.1, 0.2)].reduce(judge, []);
    expect(lensBy(two)).toBeUndefined();
    const photos = [near(0.18, -0.1, 0.3), near(-0.18, -0.1, 0.15)].reduce(judge, two);
    expect(photos.map(({ is }) => is)).toEqual(["helps", "helps", "helps", "helps"]);
    for (const some of [photos.slice(0, 3), photos]) {
      const told = lensBy(some);
      expect(Math.abs((told?.distortion ?? 0) - 4000)).toBeLessThanOrEqual(told?.within ?? 0);
      expect(told?.within).toBeLessThanOrEqual(WELL_KNOWN);
    }
  });

  test("each photo says what it is good for", () => {
    const first = judgedForLens("a", seen(near(0.18, 0.1, 0.1)), []);
    const is = (sha256: string, of: Parameters<typeof judgedForLens>[1]): string => judgedForLens(sha256, of, [first]).is;
    expect(is("a", seen(near(0.18, 0.1, 0.1)))).toBe("twice");
    expect(is("b", { is: "not looked" })).toBe("not-looked");
    expect(is("b", seen(near(0, 0, 0.1), { width: 2000, height: 1500 }))).toBe("other-size");
    expect(is("b", { ...seen(near(0, 0, 0.1)), codes: [] })).toBe("no-card");
    const twoCards = seen(near(0, 0, 0.1));
    expect(is("b", { ...twoCards, codes: [...twoCards.codes, ...twoCards.codes] })).toBe("several");
    // bent to a radius of 0.5 m about its long middle: its edges 54 mm off are 3 mm up
    const bent = seen(near(0.1, 0.05, 0.3), undefined, ({ x }) => (x - 107_950) ** 2 / 1_000_000);
    expect(is("b", bent)).toBe("not-flat");
    // from 3 m, in the middle, it is as small as 215 pixels and a lens hardly bends it
    expect(is("b", seen({ tilt: 0.1, away: 3, right: 0, down: 0, k: 0.004 }))).toBe("helps-little");
  });
});

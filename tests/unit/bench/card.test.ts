import { describe, expect, test } from "vitest";
import { type Asked, FOCAL } from "#infra/bench/card/scene.ts";
import { type Trial, trial } from "#infra/bench/card/trial.ts";
import { chanceFrom } from "#infra/chance/index.ts";

/** The bench's own way, a few photos of it: drawn, JPEG, decoded, refined, fitted, tapped. `npm run bench -- card` has the rest. */
const of = (asked: Asked, seed: number, each = 10): Promise<Trial> => trial(chanceFrom(seed), asked, each);

describe("a card in a photo, the whole way", () => {
  test("24 in at 15°, 30° and 45°: four codes, a flat sheet, nearly all errors within U and within 1/16 in", {
    timeout: 30_000,
  }, async () => {
    const made = [
      await of({ tilt: 15, distance: 1.2 }, 1),
      await of({ tilt: 30, distance: 1.2 }, 2),
      await of({ tilt: 45, distance: 1 }, 3),
    ];
    for (const { refined, plane } of made) expect([refined, plane?.flat]).toEqual([4, true]);
    const near = made.flatMap(({ known }) => known.filter(({ within }) => within <= 2));
    expect(near.length).toBe(60);
    const share = (list: typeof near, most: (one: (typeof near)[number]) => number): number =>
      list.filter((one) => Math.abs(one.error) > most(one)).length / list.length;
    // 5 % of 60 is 3; those of one photo share its print, lens and plane
    expect(share(near, ({ doubt }) => doubt)).toBeLessThanOrEqual(0.1);
    expect(share(near, () => 0.0254 / 16)).toBeLessThanOrEqual(0.05);
    expect(near.reduce((sum, { doubt }) => sum + doubt, 0) / near.length).toBeLessThan(0.0254 / 16);
    // the tilt is the camera's own, but for where in the picture the card lies, which does not count
    expect((made[2]?.plane?.cosine ?? 0) / 1e6).toBeCloseTo(Math.cos(Math.PI / 4), 2);
  });

  test("a sheet bent to 0.5 m, and one with a corner 10 mm up, are not flat or are read without that corner", {
    timeout: 30_000,
  }, async () => {
    const bent = await of({ tilt: 30, distance: 1.2, lying: { bend: 0.5 } }, 4, 1);
    expect(bent.plane?.flat).toBe(false);
    const eared = await of({ tilt: 30, distance: 1.2, lying: { ear: 0.01 } }, 5, 1);
    expect(eared.plane?.flat === false || eared.plane?.rejected.some((name) => name.startsWith("c/"))).toBe(true);
  });

  test("the camera is a phone's: 26 mm on film is 3,000 pixels at 12 megapixels", () => {
    // half the diagonal of film is 21.63 mm, of 4000 × 3000 pixels 2500
    expect(Math.abs((26 / 21.63) * 2500 - FOCAL)).toBeLessThan(10);
  });
});

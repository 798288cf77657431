import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { type GreyMeasures, judgePhoto, measureGrey, ownPhotoLimits } from "#core/photo/index.ts";
import { drawing } from "#infra/demo/drawings.ts";
import { type SketchName, sketches } from "#infra/demo/sketches.ts";
import { greyOf, open, photographs, pixelsOf, type Tile, tiles, within } from "../../helpers/photographs.ts";
import { area, areaWithInterval, type Drawn, type Interval, share } from "../../helpers/separation.ts";
import { asTaken, both, type Change, focus, noisy, recompressed, shaken } from "../../helpers/spoilt.ts";

/** Still to be read, by us: lengths in pixels at a long edge of 1024. */
const readable: readonly (readonly [string, Change])[] = [
  ["as taken", asTaken],
  ["JPEG of quality 30", recompressed(30)],
  ["noise of 5 steps", noisy(5)],
  ["focus 1 px", focus(1)],
];
/** Not to be read any more: strokes of 3 px are gone. */
const blurred: readonly (readonly [string, Change])[] = [
  ["focus 3 px", focus(3)],
  ["focus 6 px", focus(6)],
  ["focus 4 px, noise of 5 steps", both(focus(4), noisy(5))],
  ["focus 4 px, JPEG of quality 60", both(focus(4), recompressed(60))],
  ["shaken 15 px across", shaken(15, "across")],
  ["shaken 15 px down", shaken(15, "down")],
  ["shaken 25 px diagonally", shaken(25, "diagonal")],
];
/** Between the two: shown in the table and judged by nobody. */
const between: readonly (readonly [string, Change])[] = [
  ["focus 2 px", focus(2)],
  ["shaken 9 px across", shaken(9, "across")],
];

interface Measured extends GreyMeasures {
  readonly photograph: string;
  readonly change: string;
}

async function measured(list: readonly Tile[], changes: readonly (readonly [string, Change])[]): Promise<readonly Measured[]> {
  const found: Measured[] = [];
  for (const [change, spoil] of changes) {
    for (const { photograph, pixels } of list) {
      const { pixels: grey, width, height } = await greyOf(open(await spoil(pixels)));
      found.push({ photograph, change, ...measureGrey(grey, width, height) });
    }
  }
  return found;
}

let sharpTiles: readonly Tile[] = [];
let blurredAsTaken: readonly Tile[] = [];
let good: readonly Measured[] = [];
let bad: readonly Measured[] = [];
let middling: readonly Measured[] = [];

beforeAll(async () => {
  const all = await tiles();
  sharpTiles = all.filter(({ plain, blurredAsTaken }) => !plain && !blurredAsTaken);
  blurredAsTaken = all.filter((tile) => tile.blurredAsTaken);
  good = await measured(sharpTiles, readable);
  bad = [...(await measured(sharpTiles, blurred)), ...(await measured(blurredAsTaken, [["the hand, as taken", asTaken]]))];
  middling = await measured(sharpTiles, between);
}, 120_000);

const passes = ({ sharpness, edges, exposure }: GreyMeasures): boolean =>
  judgePhoto({ width: 1024, height: 768, sharpness, edges, exposure }).verdict === "readable";
const by = (list: readonly Measured[], figure: (one: Measured) => number): readonly Drawn[] =>
  list.map((one) => ({ photograph: one.photograph, figure: figure(one) }));
const said = ({ value, from, to }: Interval): string => `${value.toFixed(3)} (${from.toFixed(3)} to ${to.toFixed(3)})`;
const named = (list: readonly Measured[], change: string): readonly Measured[] => list.filter((one) => one.change === change);

describe("is it usable: limits set on real photographs, to be set on the company's own pictures", () => {
  it("tells readable from blurred pictures, by focus and by shaking, noise and recompression beside it", () => {
    const rows = [...new Set([...good, ...middling, ...bad].map(({ change }) => change))].map((change) => {
      const list = [...named(good, change), ...named(middling, change), ...named(bad, change)];
      const figures = list.map(({ edges }) => edges / 1000).sort((a, b) => a - b);
      const taken = list.filter(passes).length;
      const ofClass = bad.some((one) => one.change === change)
        ? "blurred"
        : good.some((one) => one.change === change)
          ? "readable"
          : "between";
      return `  ${ofClass.padEnd(9)}${change.padEnd(32)}${String(taken).padStart(3)} of ${list.length} taken   edges ${figures[0]?.toFixed(1)} to ${figures.at(-1)?.toFixed(1)}`;
    });
    const [edges, laplacian] = [(one: Measured) => one.edges, (one: Measured) => one.sharpness].map((figure) =>
      areaWithInterval(by(good, figure), by(bad, figure)),
    ) as [Interval, Interval];
    const [goodTaken, badTaken] = [good.filter(passes).length, bad.filter(passes).length];
    console.log(
      [
        `usable: ${photographs.length} photographs in ${sharpTiles.length + blurredAsTaken.length} tiles (${blurredAsTaken.length} of them blurred when taken), ${good.length} readable and ${bad.length} blurred pictures`,
        ...rows,
        `  area under the ROC curve, by edges in the weakest direction ${said(edges)}, by the Laplacian's variance alone ${said(laplacian)}; intervals of 95 %, one photograph left out at a time`,
        `  chosen: edges at least ${ownPhotoLimits.edgesAtLeast / 1000} and Laplacian's variance at least ${ownPhotoLimits.sharpnessAtLeast / 1000}: ${said(share(goodTaken, good.length))} of the readable taken, ${said(share(bad.length - badTaken, bad.length))} of the blurred sent back`,
        "  to be set on the company's own pictures",
      ].join("\n"),
    );
    expect(edges.value).toBeGreaterThan(0.98);
    // What the second measure is for: shaking and noise, which the Laplacian's variance takes for sharp.
    expect(edges.value).toBeGreaterThan(laplacian.value);
    expect(goodTaken / good.length).toBeGreaterThan(0.95);
    expect((bad.length - badTaken) / bad.length).toBeGreaterThan(0.95);
  });

  it("takes every sharp tile as it was taken, recompressed or noisy, and sends back every tile of the hand", () => {
    expect(good.filter(({ change }) => change !== "focus 1 px").filter((one) => !passes(one))).toEqual([]);
    expect(named(bad, "the hand, as taken").filter(passes)).toEqual([]);
  });

  it("takes the whole photographs but the one that was blurred when taken", async () => {
    const taken: string[] = [];
    for (const { name, file } of photographs) {
      const { width = 0, height = 0 } = await sharp(file).metadata();
      const grey = await greyOf(open(await pixelsOf(within(sharp(file), 2048))));
      const judged = judgePhoto({ width, height, ...measureGrey(grey.pixels, grey.width, grey.height) });
      if (judged.verdict === "readable") taken.push(name);
      else expect([name, judged.reason]).toEqual(["hand", "blurred"]);
    }
    expect(taken).toEqual(photographs.filter((one) => !one.blurredAsTaken).map(({ name }) => name));
    expect(taken.length).toBeGreaterThanOrEqual(5);
  });

  it("takes the demo's drawings", async () => {
    for (const sketch of Object.keys(sketches) as SketchName[]) {
      const about = { wallClock: "2026-05-12T11:44:00", offset: "-05:00", latitude: 41, longitude: -89 };
      const grey = await greyOf(sharp(await drawing({ title: sketch, job: "Courtyard fall", sketch, ...about })));
      const judged = judgePhoto({ width: 1600, height: 1200, ...measureGrey(grey.pixels, grey.width, grey.height) });
      expect([sketch, judged]).toEqual([sketch, { verdict: "readable" }]);
    }
  });

  it("sends back what a canvas left blank (B05), and a night without light, by its light and not as blurred (D01)", async () => {
    const blank = { width: 1024, height: 768, pixels: new Uint8Array(1024 * 768) };
    expect(judgePhoto({ ...blank, ...measureGrey(blank.pixels, 1024, 768) })).toEqual({ verdict: "unreadable", reason: "too-dark" });
    const white = new Uint8Array(1024 * 768).fill(255);
    expect(judgePhoto({ ...blank, ...measureGrey(white, 1024, 768) })).toEqual({ verdict: "unreadable", reason: "too-bright" });
    const even = new Uint8Array(1024 * 768).fill(140);
    expect(judgePhoto({ ...blank, ...measureGrey(even, 1024, 768) })).toEqual({ verdict: "unreadable", reason: "blurred" });
    const night = await greyOf(open((sharpTiles[0] as Tile).pixels).linear(0.015, 0));
    const judged = judgePhoto({ width: 1024, height: 1024, ...measureGrey(night.pixels, night.width, night.height) });
    expect(judged).toEqual({ verdict: "unreadable", reason: "too-dark" });
  });
});

describe("the area under the curve, by hand", () => {
  const drawn = (...figures: number[]): readonly Drawn[] => figures.map((figure) => ({ photograph: "one", figure }));
  it("of 3, 1 against 2, 1: pairs 1, 1, 0 and a half are 2.5 of 4", () => {
    expect(area(drawn(3, 1), drawn(2, 1))).toBe(0.625);
  });
  it("of a share of 8 in 10 lies from 0.490 to 0.943 (Wilson)", () => {
    // (8 + 1.9208) / 13.8416 = 0.71674; 1.96 / 13.8416 x sqrt(1.6 + 0.9604) = 0.22658
    const { from, to } = share(8, 10);
    expect([from.toFixed(4), to.toFixed(4)]).toEqual(["0.4902", "0.9433"]);
  });
});

import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { ALIKE_AT_MOST, alike, bandsOf, type Grey, type Likeness, likeness, lookUp, nearness } from "#core/photo/index.ts";
import { greyOf, open, photographs, pixelsOf, type Tile, thumbnails, tiles } from "../../helpers/photographs.ts";
import { retold, screenOf } from "../../helpers/retold.ts";
import { share } from "../../helpers/separation.ts";
import { numbers } from "../../helpers/spoilt.ts";

interface Kept {
  readonly tile: Tile;
  readonly known: Likeness;
}

let all: readonly Tile[] = [];
let kept: readonly Kept[] = [];
let quarters: readonly Likeness[] = [];

const likenessOf = async (picture: ReturnType<typeof open>): Promise<Likeness> => likeness(await greyOf(picture));

beforeAll(async () => {
  all = await tiles();
  const scenes = all.filter(({ plain }) => !plain);
  kept = await Promise.all(scenes.map(async (tile) => ({ tile, known: await likenessOf(open(tile.pixels)) })));
  const small = scenes.flatMap(({ pixels }) => {
    const [width, height] = [pixels.width >> 1, pixels.height >> 1];
    return [0, 1, 2, 3].map((n) => open(pixels).extract({ left: (n & 1) * width, top: (n >> 1) * height, width, height }));
  });
  quarters = await Promise.all([...small, ...thumbnails.map((file) => sharp(file))].map(likenessOf));
}, 120_000);

const rate = (k: number, n: number): string => {
  const { value, from, to } = share(k, n);
  return `${value.toFixed(2)} (${from.toFixed(2)} to ${to.toFixed(2)})`;
};

/** As the edge's index finds it: some hash of the one, in some turn, agrees with one of the other's in a band but for unsure bits. */
function foundByBands(asked: Likeness, stored: Likeness): boolean {
  return asked.hashes.some((hash, i) => {
    const keys = lookUp(hash, asked.unsure[i] as string).keys.map((list) => new Set(list));
    return stored.hashes.some((other, k) => (i === 0 || k === 0) && bandsOf(other).some((band, n) => keys[n]?.has(band)));
  });
}

describe("is it new: likeness on real photographs", () => {
  it("finds what was recompressed, resized, turned and brightened, and says what it loses by cropping", async () => {
    const lines: string[] = [];
    const recall = new Map<string, number>();
    for (const [kind, ways] of Object.entries(retold)) {
      for (const [way, tell] of Object.entries(ways)) {
        const again = await Promise.all(kept.map(async ({ tile }) => likenessOf(await tell(tile.pixels))));
        const near = again.map((one, n) => nearness(one, (kept[n] as Kept).known)?.distance);
        const found = again.filter((one, n) => alike(one, (kept[n] as Kept).known));
        const looked = again.filter((one, n) => alike(one, (kept[n] as Kept).known) && foundByBands(one, (kept[n] as Kept).known));
        const sorted = near.map((bits) => bits ?? 64).sort((a, b) => a - b);
        recall.set(`${kind} ${way}`, looked.length / kept.length);
        lines.push(
          `  ${kind.padEnd(13)}${way.padEnd(22)}${rate(found.length, kept.length)}   ${looked.length} of ${found.length}   bits off ${sorted.join(" ")}`,
        );
      }
    }
    const others = [...quarters, ...kept.map(({ known }) => known)].filter(({ abstains }) => abstains === null);
    let pairs = 0;
    let nearest = 64;
    const wrong: number[] = [];
    for (const [i, one] of quarters.entries()) {
      for (const other of quarters.slice(0, i)) {
        const bits = nearness(one, other)?.distance;
        if (bits === undefined) continue;
        pairs += 1;
        nearest = Math.min(nearest, bits);
        if (bits <= ALIKE_AT_MOST) wrong.push(bits);
      }
    }
    console.log(
      [
        `new: ${photographs.length} photographs, ${kept.length} tiles that show a scene; alike is at most ${ALIKE_AT_MOST} of 64 bits off in one of eight turns`,
        "  what was done                      recall, 95 %           by the index",
        ...lines,
        `  false alarms: ${wrong.length} of ${pairs} pairs of ${others.length - kept.length} different pictures, at most ${share(wrong.length, pairs).to.toFixed(4)} at 95 %; the nearest pair is ${nearest} bits off`,
        "  to be set on the company's own pictures",
      ].join("\n"),
    );
    for (const [what, least] of [
      ["recompressed JPEG of quality 15", 1],
      ["resized to 160 px", 1],
      ["turned by 90°", 1],
      ["turned mirrored, 90°", 1],
      ["brightness × 0.7", 1],
      ["brightness × 1.3", 1],
      ["cropped 2 % off, all sides", 0.9],
      ["on a screen between black bars", 0.85],
    ] as const)
      expect(recall.get(what) as number, what).toBeGreaterThanOrEqual(least);
    expect(wrong).toEqual([]);
    expect(pairs).toBeGreaterThan(1_000);
  }, 180_000);

  it("abstains from what shows nothing of its own: sky, fog, gravel, black, white, one colour (D01)", async () => {
    const size = { width: 1024, height: 768 };
    const picture = (at: (x: number, y: number) => number): Grey => ({
      ...size,
      pixels: Uint8Array.from({ length: 1024 * 768 }, (_, n) => Math.max(0, Math.min(255, Math.round(at(n % 1024, Math.floor(n / 1024)))))),
    });
    const skies = await Promise.all(all.filter(({ plain }) => plain).map(({ pixels }) => likenessOf(open(pixels))));
    expect(skies.map(({ abstains }) => abstains)).toEqual(["even", "even", "even"]);
    const next = numbers(4);
    const flat = {
      black: picture(() => 0),
      "lens cap": picture(() => 4 * next()),
      white: picture(() => 255),
      "one colour": picture(() => 118),
      "one colour a step on": picture(() => 119),
      fog: picture((_, y) => 190 + y / 40 + 6 * next()),
    };
    for (const [name, grey] of Object.entries(flat))
      expect([name, likeness(grey)]).toEqual([name, expect.objectContaining({ abstains: "even", hashes: [] })]);
    for (const stone of [6, 12, 24]) expect([stone, likeness(gravel(stone, picture)).hashes]).toEqual([stone, []]);
  });

  it("of a white and a blue picture says nothing rather than far apart (D01)", async () => {
    const solid = (background: string) =>
      sharp({ create: { width: 640, height: 480, channels: 3, background } })
        .png()
        .toBuffer();
    const [white, blue] = await Promise.all(["#ffffff", "#1f4fd0"].map(async (colour) => likenessOf(sharp(await solid(colour)))));
    expect(nearness(white as Likeness, blue as Likeness)).toBeNull();
    expect(alike(white as Likeness, white as Likeness)).toBe(false);
  });

  it("knows a picture lying by its tag and one turned in its pixels for the same (D03)", async () => {
    const { tile } = kept[3] as Kept;
    // Shown turned by a right angle: the pixels lie the other way and the tag 6 says so.
    const lying = await open(tile.pixels).rotate(270).withMetadata({ orientation: 6 }).jpeg({ quality: 90 }).toBuffer();
    const turned = await open(tile.pixels).jpeg({ quality: 90 }).toBuffer();
    const [byTag, byPixels] = [await likenessOf(open(await pixelsOf(sharp(lying).autoOrient()))), await likenessOf(sharp(turned))];
    const found = nearness(byTag, byPixels);
    expect(found?.distance).toBeLessThanOrEqual(1);
    expect(found?.turn).toBe(1);
  });

  it("names the turn of one handed in turned, mirrored or upside down (D04)", async () => {
    const { tile, known } = kept[0] as Kept;
    // The tag's numbers: 3 upside down, 6 to be turned right by 90°, 8 left, 2 mirrored.
    const ways = {
      3: open(tile.pixels).rotate(180),
      6: open(tile.pixels).rotate(90),
      8: open(tile.pixels).rotate(270),
      2: open(tile.pixels).flop(),
    };
    for (const [turn, picture] of Object.entries(ways)) {
      const again = await likenessOf(open(await pixelsOf(picture)));
      expect([turn, nearness(known, again)]).toEqual([turn, { distance: expect.any(Number), turn: Number(turn) }]);
      expect(nearness(known, again)?.distance).toBeLessThanOrEqual(1);
    }
  });

  it("knows the picture inside a screen's black bars, and does not take the bars for likeness (D06)", async () => {
    const [one, other] = [kept[3] as Kept, kept[8] as Kept];
    const screens = await Promise.all([one, other].map(async ({ tile }) => likenessOf(open(await pixelsOf(await screenOf(tile.pixels))))));
    expect(alike(screens[0] as Likeness, one.known)).toBe(true);
    expect(alike(screens[1] as Likeness, other.known)).toBe(true);
    expect(alike(screens[0] as Likeness, screens[1] as Likeness)).toBe(false);
  });
});

/** Stones of about this many pixels, each of its own grey, strewn until none of the ground is seen. */
function gravel(stone: number, picture: (at: (x: number, y: number) => number) => Grey): Grey {
  const next = numbers(9);
  const grey = picture(() => 110);
  const strewn = Math.round((6 * 1024 * 768) / (stone * stone));
  for (let n = 0; n < strewn; n += 1) {
    const [x, y, radius, step] = [next() * 1024, next() * 768, stone * (0.4 + 0.6 * next()) * 0.5, 70 + 110 * next()];
    for (let j = Math.max(0, Math.ceil(y - radius)); j < Math.min(768, y + radius); j += 1)
      for (let i = Math.max(0, Math.ceil(x - radius)); i < Math.min(1024, x + radius); i += 1)
        if ((i - x) ** 2 + (j - y) ** 2 < radius * radius) grey.pixels[j * 1024 + i] = step - (20 * (j - y)) / radius;
  }
  return grey;
}

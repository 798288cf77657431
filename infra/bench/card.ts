import { chanceFrom } from "../chance/index.ts";
import type { Asked } from "./card/scene.ts";
import type { Measured } from "./card/spans.ts";
import { accuracy, type Cell, falseShare, listed, meanOf } from "./card/table.ts";
import { type Trial, trial } from "./card/trial.ts";
import type { Line } from "./line.ts";

export interface CardAsked {
  /** Degrees and metres. */
  readonly tilts: readonly number[];
  readonly distances: readonly number[];
  /** Photos of each tilt and distance, and lengths in each photo for every number of card lengths. */
  readonly photos: number;
  readonly spans: number;
  /** Whole pictures, each at its tilt; bent and eared cards of each kind. */
  readonly whole: readonly number[];
  readonly spoilt: number;
}

export const EVERY_TILT: CardAsked = {
  tilts: [0, 15, 30, 45, 55],
  distances: [0.6, 0.9, 1.2, 1.5],
  photos: 6,
  spans: 8,
  whole: [0, 45],
  spoilt: 8,
};

/** 1/16 in. */
const NEEDED = 0.0254 / 16;
const seedOf = (tilt: number, distance: number, photo: number): number =>
  1_000_000 + 10_000 * tilt + 1000 * Math.round(10 * distance) + photo;

async function trials(asked: Asked, photos: number, spans: number): Promise<readonly Trial[]> {
  const made: Trial[] = [];
  for (let n = 0; n < photos; n++) made.push(await trial(chanceFrom(seedOf(asked.tilt, asked.distance, n)), asked, spans));
  return made;
}

/** Cards that are not as they should be. A soiled one is not wrong: what is read of it must cover. */
const spoilt: readonly (Pick<Asked, "lying" | "over"> & { readonly what: string })[] = [
  { what: "bent to 0.5 m, middle up", lying: { bend: 0.5 } },
  { what: "bent to 1 m, edges up", lying: { bend: -1 } },
  { what: "bent to 2 m, middle up", lying: { bend: 2 } },
  { what: "a corner up by 10 mm", lying: { ear: 0.01 } },
  { what: "a corner up by 3 mm", lying: { ear: 0.003 } },
  { what: "up to 20 mm over or under the plane, as stated", over: 0.02 },
  { what: "dirt in blobs", lying: { dirt: 0.05 } },
];

const notFlat = (all: readonly Trial[]): number => all.filter(({ plane }) => plane !== undefined && !plane.flat).length;
/** Lengths of which the reader would be wrong: beyond U on a card that was taken for flat. */
const misled = (all: readonly Trial[]): readonly Measured[] => all.flatMap(({ plane, known }) => (plane?.flat ? known : []));

async function spoiltCards(count: number): Promise<Line> {
  const rows = [];
  let [beyond, lengths] = [0, 0];
  for (const [kind, { what, ...how }] of spoilt.entries()) {
    const all: Trial[] = [];
    for (let n = 0; n < count; n++) {
      const tilt = [15, 30, 45][n % 3] as number;
      all.push(await trial(chanceFrom(seedOf(tilt, 1, 100 * (kind + 1) + n)), { tilt, distance: 1, ...how }, 6));
    }
    const taken = misled(all);
    beyond += taken.filter(({ error, doubt }) => Math.abs(error) > doubt).length;
    lengths += taken.length;
    rows.push([
      what,
      `${count}`,
      `${notFlat(all)}`,
      `${all.filter(({ plane }) => plane === undefined).length}`,
      `${taken.length}`,
      falseShare(taken),
    ]);
  }
  console.log(listed([["card", "photos", "not flat", "not read", "lengths of the rest", "beyond U"], ...rows]));
  return {
    what: "lengths beyond U of a bent, eared, raised or soiled card that was taken for flat",
    unit: "%",
    ours: (100 * beyond) / lengths,
    beside: 5,
    atMost: 1,
  };
}

/**
 * A printed card as a scale, the whole way from a rendered 12-megapixel photo to a length of 24 in: JPEG, codes decoded, corners
 * refined, plane fitted, two taps. Lens, print, blur, noise, bow of the sheet and lean of the measured plane are drawn within
 * what is stated of them. Prints the tables; its lines are what must hold.
 */
export async function card({ tilts, distances, photos, spans, whole, spoilt: each }: CardAsked): Promise<readonly Line[]> {
  const cells: Cell[] = [];
  for (const tilt of tilts)
    for (const distance of distances) cells.push({ tilt, distance, trials: await trials({ tilt, distance }, photos, spans) });
  console.log("24 in on the card's plane, mm: mean error / largest / mean U, share beyond U; by card lengths within which both ends lie");
  console.log("lens within 0.05 % (measured)");
  console.log(accuracy(cells, ({ known }) => known));
  console.log("lens within 0.5 % (unknown)");
  console.log(accuracy(cells, ({ unknown }) => unknown));
  for (const tilt of whole) {
    const [one] = await trials({ tilt, distance: 1.2, whole: true }, 1, 1);
    console.log(`whole picture of 12 megapixels, ${tilt}°, 1.2 m: ${one?.refined} of 4 codes found`);
  }
  const stated = cells.filter(({ tilt, distance }) => tilt <= 45 && distance <= 1.2).flatMap((cell) => cell.trials);
  const near = stated.flatMap(({ known }) => known.filter(({ within }) => within <= 2));
  const all = cells.flatMap((cell) => cell.trials);
  const share = (list: readonly Measured[]): number =>
    (100 * list.filter(({ error, doubt }) => Math.abs(error) > doubt).length) / list.length;
  const beyondNeed = (100 * near.filter(({ error }) => Math.abs(error) > NEEDED).length) / near.length;
  return [
    {
      what: "24 in within two card lengths, to 45°, 0.6 to 1.2 m, lens measured: mean U",
      unit: "mm",
      ours: 1000 * meanOf(near.map(({ doubt }) => doubt)),
      beside: 1000 * NEEDED,
      atMost: 1,
    },
    { what: "of those, errors beyond 1/16 in", unit: "%", ours: beyondNeed, beside: 5, atMost: 1 },
    {
      what: "errors beyond U, lens measured, all tilts and spans",
      unit: "%",
      ours: share(all.flatMap(({ known }) => known)),
      beside: 5,
      atMost: 1,
    },
    {
      what: "errors beyond U, lens unknown, all tilts and spans",
      unit: "%",
      ours: share(all.flatMap(({ unknown }) => unknown)),
      beside: 5,
      atMost: 1,
    },
    await spoiltCards(each),
  ];
}

import type { Spot } from "#core/geometry/index.ts";
import type { SeenSpot, Whats } from "#core/job/index.ts";
import { card, height, middle, seenFrom, type View, width } from "./card-seen.ts";
import type { What } from "./job.ts";

/** Square on from 0.8 m: 3000 px / 0.8 m is 3,750 px to the metre, and the card's middle is the picture's, 2000, 1500. */
const view: View = { tilt: 0, away: 0.8, right: 0, down: 0, k: 0 };
export const photo = "c".repeat(64);
const thousandths = ({ x, y }: Spot, u: number): SeenSpot => [Math.round(1000 * x), Math.round(1000 * y), u];
/** A tap so far from the card's middle, micrometres to the right and down. */
export const tapped = (x: number, y: number): SeenSpot => thousandths(seenFrom(view, { x: middle.x + x, y: middle.y + y }), 250);

/** 20 in, 508 mm, level and 100 mm under the card's middle: from 2000 - 0.254 x 3750 = 1047.5 to 2952.5, at 1500 + 375 = 1875. */
export const measuredWords = (more: Partial<Whats["photo-measured"]> = {}): What =>
  ({
    ...{ item: "the-length", photo, width, height, paper: "letter" },
    ruler: { typed: "254.0", unit: "mm" },
    lens: { distortion: 0, within: 50 },
    codes: card.map(({ corners }, place) => ({ place, corners: corners.map((spot) => thousandths(seenFrom(view, spot), 50)) })),
    from: tapped(-254_000, 100_000),
    to: tapped(254_000, 100_000),
    ...more,
  }) as unknown as What;

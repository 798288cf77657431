import { describe, test } from "vitest";
import { cosines, SMALL } from "#core/photo/cosines.ts";
import { greyFromRgba, sharpness } from "#core/photo/index.ts";
import { published, source } from "./checked.ts";

const transform = source(
  "Ahmed, Natarajan, Rao, Discrete cosine transform, IEEE Transactions on Computers 1974",
  "definition, scaled orthonormal",
  "from memory",
);
const laplacian = source(
  "Pech-Pacheco et al., Diatom autofocusing in brightfield microscopy, ICPR 2000",
  "variance of the Laplacian",
  "from memory",
);
const luma = source("ITU-R BT.709", "luma from red, green and blue", "from memory");

const picture = (at: (x: number, y: number) => number): Float64Array =>
  Float64Array.from({ length: SMALL * SMALL }, (_, n) => at(n % SMALL, Math.floor(n / SMALL)));

describe("what is measured on grey pixels", () => {
  test("a wave of the transform gives its own coefficient and no other", () => {
    const wave = picture((x, y) => Math.cos(((2 * x + 1) * 3 * Math.PI) / 64) * Math.cos(((2 * y + 1) * 5 * Math.PI) / 64));
    const found = [...cosines(wave)];
    // Each of the two sums of squared cosines over 32 places is 16; orthonormal: 16 x sqrt(2 / 32) for each.
    published(transform, "coefficient (3, 5) of its own wave", found[5 * SMALL + 3] as number, 16, { absolute: 1e-9 });
    const others = found.filter((_, n) => n !== 5 * SMALL + 3);
    published(transform, "the largest of the others", Math.max(...others.map(Math.abs)), 0, { absolute: 1e-9 });
  });

  test("keeps the energy of any picture", () => {
    const steps = picture((x, y) => (x * 7 + y * y * 3) % 251);
    const energy = (list: Float64Array): number => list.reduce((sum, one) => sum + one * one, 0);
    published(transform, "sum of squares before and after (Parseval)", energy(cosines(steps)), energy(steps), { share: 1e-12 });
  });

  test("a single bright point has the variance of the kernel's own numbers", () => {
    const point = Uint8Array.from({ length: 49 }, (_, n) => (n === 24 ? 10 : 0));
    // Over 25 places: -40 once, 10 four times, else 0: mean 0, (1600 + 400) / 25.
    published(laplacian, "variance of a point of 10 in 7 × 7, grey steps squared", sharpness(point, 7, 7), 80, { absolute: 1e-12 });
  });

  test("weighs the colours of a canvas", () => {
    const rgba = Uint8Array.of(255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255, 255, 255, 255, 255);
    // 255 times 0.2126, 0.7152 and 0.0722, to whole steps
    published(luma, "grey of red, green, blue and white", [...greyFromRgba(rgba, 4, 1).pixels], [54, 182, 18, 255], { digits: 0 });
  });
});

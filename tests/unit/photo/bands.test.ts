import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bandsApart, bandsOf, distance, lookUp, nearest, nearestOf, turned, turns, undone } from "#core/photo/index.ts";
import { bandOf } from "#core/photo/waves.ts";

const hash = fc.bigInt({ min: 0n, max: 2n ** 64n - 1n }).map((value) => value.toString(16).padStart(16, "0"));

describe("bands of a hash", () => {
  it("gives a wave and its like across the diagonal to one band, the first bit the highest", () => {
    // Waves (u, v) in order: 01 10 | 02 11 20 | 03 12 21 30 | 04 13 22 31 40 | ...; pairs 01 02 03 12 04 13 to the bands 0 1 2 0 1 2,
    // the equal ones 11 22 to 0 1. So the first fourteen bits belong to 0 0 1 0 1 2 0 0 2 1 2 1 2 1.
    expect(bandsOf(`d3${"0".repeat(14)}`)).toEqual([0b11111 * 2 ** 17, 0, 0]);
    expect(bandsOf(`2854${"0".repeat(12)}`)).toEqual([0, 0b11111 * 2 ** 16, 0]);
    expect(bandsOf(`04a8${"0".repeat(12)}`)).toEqual([0, 0, 0b1111 * 2 ** 17]);
    expect(bandsOf("f".repeat(16))).toEqual([2 ** 22 - 1, 2 ** 21 - 1, 2 ** 21 - 1]);
  });

  it("keeps distances", () => {
    fc.assert(
      fc.property(hash, hash, (a, b) => {
        expect(bandsApart(bandsOf(a), bandsOf(b))).toBe(distance(a, b));
      }),
    );
  });

  it("finds the nearest turn as the hashes do", () => {
    fc.assert(
      fc.property(hash, hash, (a, b) => {
        expect(nearestOf(lookUp(a, "0".repeat(16)), bandsOf(b))).toEqual(nearest(a, b));
      }),
    );
  });

  it("asks for all combinations of the unsure bits, in every turn, once each and ascending", () => {
    // Nothing unsure and all noughts: turned, the odd waves change, so the eight turns ask for at most eight numbers a band.
    const none = lookUp("0".repeat(16), "0".repeat(16));
    expect(none.turned).toHaveLength(8);
    for (const keys of none.keys) expect(keys.length).toBeLessThanOrEqual(8);
    fc.assert(
      fc.property(hash, hash, (value, other) => {
        // Of what is unsure four bits a band at most, as likenesses have them.
        const mask = maskOf(other);
        for (const turn of turns) {
          const copy = turned(flipped(value, mask), turn);
          const { keys } = lookUp(value, mask);
          for (const [n, band] of bandsOf(copy).entries()) expect(keys[n]).toContain(band);
          for (const list of keys) {
            expect(list.length).toBeLessThanOrEqual(8 * 16);
            expect(list).toEqual([...new Set(list)].sort((a, b) => a - b));
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe("turns of a hash", () => {
  it("undo one another as the camera's tag numbers do (Exif 2.32, 4.6.4 A): 6 and 8, the others themselves", () => {
    fc.assert(
      fc.property(hash, (value) => {
        for (const turn of turns) expect(turned(turned(value, turn), undone(turn))).toBe(value);
      }),
    );
  });
});

const bits = (text: string): string => BigInt(`0x${text}`).toString(2).padStart(64, "0");
const hex = (text: string): string => BigInt(`0b${text}`).toString(16).padStart(16, "0");
/** The first four ones of each band. */
function maskOf(text: string): string {
  const left = [4, 4, 4];
  return hex(
    [...bits(text)]
      .map((bit, n) => {
        if (bit === "0" || left[bandOf[n] as number] === 0) return "0";
        left[bandOf[n] as number] = (left[bandOf[n] as number] as number) - 1;
        return "1";
      })
      .join(""),
  );
}
/** Every second one of the mask turned over. */
function flipped(text: string, mask: string): string {
  let count = 0;
  const over = [...bits(mask)].map((bit) => (bit === "1" ? count++ % 2 === 0 : false));
  return hex([...bits(text)].map((bit, n) => (over[n] ? (bit === "1" ? "0" : "1") : bit)).join(""));
}

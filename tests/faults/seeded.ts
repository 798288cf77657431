/** The same numbers for the same seed (mulberry32, in the public domain), so that a failing run can be run again. */
export interface Seeded {
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  /** A share from `least` to `most`. */
  share(least: number, most: number): number;
}

export const seeded = (seed: number): Seeded => {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    whole: (least, most) => least + Math.floor(next() * (most - least + 1)),
    share: (least, most) => least + next() * (most - least),
  };
};

/** Chance from a seed: the same draws on every machine. */
export interface Chance {
  /** 0 <= x < 1. */
  readonly next: () => number;
  /** A whole number from 0 to n - 1. */
  readonly below: (n: number) => number;
  readonly happens: (share: number) => boolean;
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number;
  readonly one: <T>(list: readonly [T, ...T[]]) => T;
  /** Hex digits. */
  readonly hex: (digits: number) => string;
}

const HEX = "0123456789abcdef";

/** Mulberry32 (public domain, from memory): 32 bits of state, enough for demonstration data. */
export function chanceFrom(seed: number): Chance {
  let state = (seed * 0x9e3779b1 + 0x6d2b79f5) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  for (let i = 0; i < 8; i++) next();
  const below = (n: number): number => Math.floor(next() * n);
  return {
    next,
    below,
    happens: (share) => next() < share,
    // Box and Muller; the first draw is never 0
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    one: (list) => list[below(list.length)] ?? list[0],
    hex(digits) {
      let text = "";
      for (let i = 0; i < digits; i++) text += HEX[below(16)];
      return text;
    },
  };
}

/** One reading to be taken: by whom, at which mark (from 1), in which round (from 1). */
export interface Turn {
  readonly person: string;
  readonly mark: number;
  readonly round: number;
}

const STEP = 0x9e3779b9;

/** Whole numbers below `most`, one after the other, the same for the same seed (a mixing of a counter, from memory). */
function seeded(seed: number): (most: number) => number {
  let at = seed >>> 0;
  return (most) => {
    at = (at + STEP) >>> 0;
    let mixed = Math.imul(at ^ (at >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % most;
  };
}

function shuffled<T>(list: readonly T[], next: (most: number) => number): readonly T[] {
  const all = [...list];
  for (let i = all.length - 1; i > 0; i -= 1) {
    const j = next(i + 1);
    [all[i], all[j]] = [all[j] as T, all[i] as T];
  }
  return all;
}

/** The order of a tape study: round by round everybody reads every mark, people and marks shuffled anew each time. */
export function turnsOf(seed: number, people: readonly string[], marks: number, rounds: number): readonly Turn[] {
  const next = seeded(seed);
  const numbers = Array.from({ length: marks }, (_, i) => i + 1);
  return Array.from({ length: rounds }, (_, i) => i + 1).flatMap((round) =>
    shuffled(people, next).flatMap((person) => shuffled(numbers, next).map((mark) => ({ person, mark, round }))),
  );
}

/** Runs what it is given one after another, in the order given; one that fails does not hold up the next. */
export function oneAfterAnother(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine.catch(() => undefined);
    return mine;
  };
}

/** Runs at most `count` of what it is given at the same time. */
export function inTurns(count: number): <T>(work: () => Promise<T>) => Promise<T> {
  const lanes = Array.from({ length: count }, oneAfterAnother);
  let given = 0;
  return (work) => {
    const lane = lanes[given % count] as (typeof lanes)[number];
    given += 1;
    return lane(work);
  };
}

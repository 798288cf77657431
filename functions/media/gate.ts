/** Lets at most `most` pieces of work run at a time; the others wait in order. */
export function gate(most: number): <T>(work: () => Promise<T>) => Promise<T> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (running >= most) await new Promise<void>((go) => waiting.push(go));
    else running += 1;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      // The place is handed on, not given back, so that nobody slips in between.
      if (next) next();
      else running -= 1;
    }
  };
}

/** Nothing may hang: whatever is waited for has a limit, and the limit's error says what it was. */

export const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** The promise's value. Throws with the name when it takes longer. */
export async function limited<T>(what: string, promise: Promise<T>, milliseconds = 25_000): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what}: nothing within ${milliseconds / 1000} s`)), milliseconds);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Asks every few milliseconds until the answer is something. */
export async function seen<T>(what: string, look: () => T | undefined | Promise<T | undefined>, milliseconds = 15_000): Promise<T> {
  const end = Date.now() + milliseconds;
  for (;;) {
    const found = await look();
    if (found !== undefined) return found;
    if (Date.now() > end) throw new Error(`${what}: not seen within ${milliseconds / 1000} s`);
    await pause(5);
  }
}

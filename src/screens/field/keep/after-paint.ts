/** Longest that work waits for a paint: a page that nobody looks at is not painted. */
const LONGEST_MS = 250;

/** Does something once what was just changed on the page has been painted. */
export function afterPaint(work: () => void): void {
  let done = false;
  const once = (): void => {
    if (done) return;
    done = true;
    work();
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, LONGEST_MS);
}

/** Resolves when the page has nothing else to do, or soon. */
export const idle = (): Promise<unknown> =>
  new Promise((resolve) => {
    if ("requestIdleCallback" in globalThis) requestIdleCallback(resolve, { timeout: 2_000 });
    else setTimeout(resolve, 200);
  });

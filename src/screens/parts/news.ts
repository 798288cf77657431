import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { WireProblem } from "../../wire/index.ts";
import type { Answer } from "./edge.ts";

/** How often an open page reads again. */
export const READ_AGAIN_MS = 15_000;

/** What a page knows: the last that was read and when, and since when nothing more comes. Times of the phone's clock, ms. */
export interface News<T> {
  readonly value?: T;
  readonly problem?: WireProblem;
  readonly readAt?: number;
  readonly awaySince?: number;
}

/** What is known after one more answer. A refusal takes away what was shown: a session may have been withdrawn. */
export function newsAfter<T>(before: News<T>, answer: Answer<T>, now: number): News<T> {
  if (answer.is === "given") return { value: answer.value, readAt: now };
  if (answer.is === "refused") return { problem: answer.problem, readAt: now };
  return { ...before, awaySince: before.awaySince ?? now };
}

/** Reads at once, then every 15 s, when the page is looked at again and when the network is back. `key` names what is read. */
export function useNews<T>(key: string, load: (before: T | undefined) => Promise<Answer<T>>): News<T> & { readonly again: () => void } {
  const [known, setKnown] = useState<{ readonly key: string; readonly news: News<T> }>({ key, news: {} });
  const now = useRef({ key, load, busy: false, news: known.news });
  if (now.current.key !== key) now.current = { key, load, busy: false, news: {} };
  now.current.load = load;

  const again = useCallback(async (): Promise<void> => {
    const mine = now.current;
    if (mine.busy) return;
    mine.busy = true;
    const answer = await mine.load(mine.news.value);
    mine.busy = false;
    // another place was opened while this was on its way
    if (now.current !== mine) return;
    mine.news = newsAfter(mine.news, answer, Date.now());
    setKnown({ key: mine.key, news: mine.news });
  }, []);

  useEffect(() => {
    void again();
    const look = (): void => {
      if (document.visibilityState === "visible") void again();
    };
    const timer = setInterval(look, READ_AGAIN_MS);
    document.addEventListener("visibilitychange", look);
    addEventListener("online", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
      removeEventListener("online", look);
    };
  }, [key, again]);

  return { ...(known.key === key ? known.news : {}), again };
}

import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { EntryMade, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";

export type Says = "shows it" | "does not show it" | "cannot tell";

interface Look {
  readonly picture: string;
  readonly says: Says;
  /** Made here, so that a look sent twice is one entry. */
  readonly id: string;
}

export interface Looks {
  /** Keeps a look and sends it; the page goes on meanwhile. */
  readonly look: (picture: string, says: Says) => void;
  readonly sending: number;
  /** Looks that the edge has not taken: they are sent again. */
  readonly waiting: number;
  readonly refused: WireProblem | undefined;
}

const AGAIN_MS = 5_000;
const newId = (): string => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

/** Sends looks one after another, so that the last word on a picture arrives last. */
export function useLooks(job: string): Looks {
  const queue = useRef<Look[]>([]);
  const busy = useRef(false);
  const [state, setState] = useState<Omit<Looks, "look">>({ sending: 0, waiting: 0, refused: undefined });

  const send = useCallback(async (): Promise<void> => {
    if (busy.current) return;
    busy.current = true;
    for (let next = queue.current[0]; next !== undefined; next = queue.current[0]) {
      setState((before) => ({ ...before, sending: queue.current.length, waiting: 0 }));
      const answer = await tell<EntryMade>(`/api/jobs/${job}/looks`, next);
      const isForNow = answer.is === "away" || (answer.is === "refused" && answer.problem.status >= 500);
      if (isForNow) break;
      queue.current.shift();
      if (answer.is === "refused") setState((before) => ({ ...before, refused: answer.problem }));
    }
    busy.current = false;
    setState((before) => ({ ...before, sending: 0, waiting: queue.current.length }));
  }, [job]);

  useEffect(() => {
    const timer = setInterval(() => queue.current.length > 0 && void send(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [send]);

  const look = useCallback(
    (picture: string, says: Says): void => {
      queue.current.push({ picture, says, id: newId() });
      void send();
    },
    [send],
  );
  return { look, ...state };
}

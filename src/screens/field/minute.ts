import { useEffect, useState } from "preact/hooks";
import { useKeep } from "./keep/index.ts";

const MINUTE_MS = 60_000;
const noInstants = (): readonly [] => [];

/**
 * The edge's clock as well as the phone knows it, ms. Moves on with the minute, and at the instant at which the next waiting thing is
 * met; `until` is asked once the page is painted.
 */
export function useMinute(until: () => readonly (number | undefined)[] = noInstants): number {
  const { keep } = useKeep();
  const [now, setNow] = useState(() => keep.now());
  useEffect(() => {
    const later = until().filter((at): at is number => at !== undefined && at > now);
    const next = Math.min(MINUTE_MS, ...later.map((at) => at - now + 50));
    const timer = setTimeout(() => setNow(keep.now()), next);
    return () => clearTimeout(timer);
  }, [keep, until, now]);
  return now;
}

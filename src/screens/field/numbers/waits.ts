import type { Check, Wait } from "../../../job/index.ts";

const MINUTE_MS = 60_000;

/** What is left of a wait at `now`, in whole minutes rounded up, ms; 0 when it is over, undefined while it is not known. */
export function leftOf({ from }: Pick<Wait, "from">, now: number): number | undefined {
  return from === undefined ? undefined : Math.max(0, Math.ceil((from - now) / MINUTE_MS) * MINUTE_MS);
}

const waitsBy = ({ function: name, lower }: Pick<Check, "function" | "lower">): string | undefined =>
  name === "time passed since" && typeof lower === "object" ? lower.function : undefined;

/** Whether a check waits for the cure of a glue session. */
export const isOfGlue = (check: Pick<Check, "function" | "lower">): boolean => waitsBy(check) === "cure time";

/** Whether a check waits for a time that releases water: of glue, or by a product's label. */
export const releasesWater = (check: Pick<Check, "function" | "lower">): boolean => isOfGlue(check) || waitsBy(check) === "as typed";

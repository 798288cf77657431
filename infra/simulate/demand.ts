import type { Arrivals } from "./arrivals.ts";
import type { ServedStep } from "./traces.ts";

/** Added to the code of a step whose company lies in another shard. */
export const ELSEWHERE = 32;

const HOUR_MS = 3_600_000;

/** The hour in which the most work is begun, and what share of an hour it takes. */
export function demandOf(
  { at, step }: Arrivals,
  here: readonly (readonly ServedStep[])[],
  elsewhere: readonly (readonly ServedStep[])[],
  isDirectory: boolean,
): { readonly hour: number; readonly use: number } {
  const mean = (list: readonly ServedStep[] | undefined): number =>
    (list ?? []).reduce(
      (sum, { calls }) =>
        sum + calls.reduce((all, { directory, holds }) => all + (directory && !isDirectory ? 0 : holds), 0) / (list?.length ?? 1),
      0,
    );
  const means = [here.map(mean), elsewhere.map(mean)] as const;
  const hours = new Map<number, number>();
  for (let i = 0; i < at.length; i += 1) {
    const code = step[i] as number;
    const hour = Math.floor((at[i] as number) / HOUR_MS);
    const takes = code < ELSEWHERE ? means[0][code] : means[1][code - ELSEWHERE];
    hours.set(hour, (hours.get(hour) ?? 0) + (takes ?? 0));
  }
  const [hour, most] = [...hours].reduce((a, b) => (b[1] > a[1] ? b : a), [0, 0] as readonly [number, number]);
  return { hour, use: most / HOUR_MS };
}

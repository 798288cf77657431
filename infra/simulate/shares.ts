import { type StepName, stepNames } from "./step.ts";
import type { ServedStep } from "./traces.ts";

/** Shares of the time of all databases in a day. */
export interface Shares {
  readonly shares: Readonly<Record<StepName, number>>;
  /** The kind of request that takes most of it. */
  readonly largest: { readonly kind: string; readonly share: number };
}

/** What each step takes of the databases' time in a day of so many steps, and which request takes most. */
export function sharesOf(steps: ReadonlyMap<StepName, readonly ServedStep[]>, day: Readonly<Record<StepName, number>>): Shares {
  const ofStep = new Map<StepName, number>();
  const ofKind = new Map<string, number>();
  for (const name of stepNames) {
    const traces = steps.get(name) ?? [];
    for (const { holds } of traces)
      for (const [kind, milliseconds] of holds) {
        const whole = (milliseconds * day[name]) / traces.length;
        ofStep.set(name, (ofStep.get(name) ?? 0) + whole);
        ofKind.set(kind, (ofKind.get(kind) ?? 0) + whole);
      }
  }
  const all = [...ofStep.values()].reduce((a, b) => a + b, 0) || 1;
  const [kind, most] = [...ofKind].reduce((a, b) => (b[1] > a[1] ? b : a), ["none", 0] as readonly [string, number]);
  const shares = Object.fromEntries(stepNames.map((name) => [name, (ofStep.get(name) ?? 0) / all])) as Record<StepName, number>;
  return { shares, largest: { kind, share: most / all } };
}

/** Most of what comes within one second. Times in milliseconds, in order. */
export function busiestSecond(times: Float64Array): number {
  let [most, from] = [0, 0];
  for (let i = 0; i < times.length; i += 1) {
    while ((times[from] ?? 0) <= (times[i] ?? 0) - 1000) from += 1;
    most = Math.max(most, i - from + 1);
  }
  return most;
}

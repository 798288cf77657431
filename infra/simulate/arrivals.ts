import { chanceFrom } from "../chance/index.ts";
import { codeOf, companyDay, type DayAsked } from "./company-day.ts";
import type { StepName } from "./step.ts";

/** Steps in the order in which they begin. */
export interface Arrivals {
  readonly at: Float64Array<ArrayBuffer>;
  readonly step: Uint8Array<ArrayBuffer>;
}

/** Companies of an installation, numbered from `first` on, `every` apart: those of one shard. `mark` is added to their steps' codes. */
export interface Numbered {
  readonly companies: number;
  readonly first: number;
  readonly every: number;
  readonly mark: number;
}

/** A list that grows, of numbers in as little room as they need. */
class Growing {
  #at = new Float64Array(1 << 16);
  #step = new Uint8Array(1 << 16);
  #count = 0;

  push(at: number, step: number): void {
    if (this.#count === this.#at.length) {
      const [times, steps] = [new Float64Array(2 * this.#count), new Uint8Array(2 * this.#count)];
      times.set(this.#at);
      steps.set(this.#step);
      [this.#at, this.#step] = [times, steps];
    }
    this.#at[this.#count] = at;
    this.#step[this.#count] = step;
    this.#count += 1;
  }

  list(): Arrivals {
    return { at: this.#at.subarray(0, this.#count), step: this.#step.subarray(0, this.#count) };
  }
}

const SLOT_MS = 20;

/** By time: counted into slots, then put right within them. */
export function sorted({ at: times, step: steps }: Arrivals): Arrivals {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const at of times) [least, most] = [Math.min(least, at), Math.max(most, at)];
  if (times.length === 0) return { at: times, step: steps };
  const slot = (at: number): number => Math.floor((at - least) / SLOT_MS);
  const places = new Uint32Array(slot(most) + 2);
  for (const at of times) places[slot(at) + 1] = (places[slot(at) + 1] ?? 0) + 1;
  for (let i = 1; i < places.length; i += 1) places[i] = (places[i] ?? 0) + (places[i - 1] ?? 0);
  const [at, step] = [new Float64Array(times.length), new Uint8Array(times.length)];
  for (let i = 0; i < times.length; i += 1) {
    const one = times[i] as number;
    let place = places[slot(one)] ?? 0;
    places[slot(one)] = place + 1;
    for (; place > 0 && (at[place - 1] as number) > one; place -= 1) {
      at[place] = at[place - 1] as number;
      step[place] = step[place - 1] as number;
    }
    at[place] = one;
    step[place] = steps[i] as number;
  }
  return { at, step };
}

/** From the day's first minute to the last evening in the zone farthest west. */
const DAY_MS = 36 * 3_600_000;
const MINUTE_MS = 60_000;

/** What comes to a shard in a day: the steps of its companies, and the sweep of every minute. */
export function arrivalsOf(numbered: readonly Numbered[], seed: number, asked: DayAsked): Arrivals {
  const all = new Growing();
  for (const { companies, first, every, mark } of numbered)
    for (let n = 0; n < companies; n += 1)
      companyDay(chanceFrom(seed * 1_000_003 + first + n * every), asked, (step, at) => all.push(at, step + mark));
  const [from, until] = asked.within ?? [0, DAY_MS];
  for (let at = from; at < until; at += MINUTE_MS) all.push(at, codeOf["every minute"]);
  return sorted(all.list());
}

/** When steps of these kinds begin, of all companies of an installation, in order. */
export function timesOf(steps: readonly StepName[], companies: number, seed: number, asked: DayAsked): Float64Array<ArrayBuffer> {
  const all = new Growing();
  const codes = new Set(steps.map((step) => codeOf[step]));
  for (let n = 0; n < companies; n += 1)
    companyDay(chanceFrom(seed * 1_000_003 + n), { ...asked, looks: false }, (code, at) => {
      if (codes.has(code)) all.push(at, code);
    });
  return all.list().at.sort();
}

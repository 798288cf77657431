import { expect } from "vitest";

/** How far a source is to be trusted: the page itself read, read on a page that quotes it, or none of that. */
export const standings = ["seen", "quoted", "worked out", "from memory", "common practice", "own"] as const;
export type Standing = (typeof standings)[number];

export interface Source {
  readonly publication: string;
  readonly section: string;
  readonly standing: Standing;
}

/** What was compared with a source in one call. */
export interface Checked {
  readonly source: Source;
  /** Quantity and unit. */
  readonly what: string;
  readonly values: number;
  /** The source's figure, the distance from it and what was allowed; for tables the same to the last digit, for ranges absent. */
  readonly figure?: number;
  readonly off: number;
  readonly allowed: number;
}

/** Sources that say different things of one quantity. */
export interface Disagreement {
  readonly what: string;
  readonly said: readonly { readonly source: Source; readonly value: number | string }[];
  /** What the program uses, or how it deals with it. */
  readonly ours: string;
}

export interface Recorded {
  readonly checked: readonly Checked[];
  readonly disagreements: readonly Disagreement[];
}

declare module "vitest" {
  interface TaskMeta {
    recorded?: Recorded;
  }
}

let checked: Checked[] = [];
let disagreements: Disagreement[] = [];

export function beginRecording(): void {
  checked = [];
  disagreements = [];
}

/** What the test that just ran compared. A test that compared nothing with a source is no reference test. */
export function endRecording(): Recorded {
  if (checked.length + disagreements.length === 0) throw new Error("this test compares no figure with a source");
  return { checked, disagreements };
}

export const source = (publication: string, section: string, standing: Standing): Source => ({ publication, section, standing });

/** A figure worked out by hand from the formula that is named. */
export const byHand = (section: string): Source => source("worked out by hand", section, "worked out");

function named(from: Source): Source {
  if (!from?.publication || !from.section || !standings.includes(from.standing)) throw new Error("a figure without a source");
  return from;
}

/** `digits`: half a unit of the last digit that the source prints. */
export type Allowed = { readonly share: number } | { readonly absolute: number } | { readonly digits: number };

function allowedAt(figure: number, allowed: Allowed): number {
  if ("share" in allowed) return allowed.share * Math.abs(figure);
  // the source rounds half up, and the floats' own dust must not count
  return "absolute" in allowed ? allowed.absolute : 0.5 * 10 ** -allowed.digits * (1 + 1e-9);
}

function one(from: Source, what: string, ours: number, figure: number, allowed: Allowed): void {
  const [off, most] = [Math.abs(ours - figure), allowedAt(figure, allowed)];
  checked.push({ source: from, what, values: 1, figure, off, allowed: most });
  expect(off, `${what}: ${ours}, ${from.publication} (${from.section}) has ${figure}`).toBeLessThanOrEqual(most);
}

/** Our figure, or several in their order, beside what the source has. */
export function published(
  from: Source,
  what: string,
  ours: number | readonly number[],
  figure: number | readonly number[],
  allowed: Allowed,
): void {
  named(from);
  const [mine, theirs] = [[ours].flat(), [figure].flat()];
  expect(mine.length, `${what}: as many figures as the source has`).toBe(theirs.length);
  for (const [i, value] of theirs.entries()) one(from, what, mine[i] ?? Number.NaN, value, allowed);
}

const numbersIn = (value: unknown): number =>
  typeof value === "number"
    ? 1
    : typeof value === "object" && value !== null
      ? Object.values(value).reduce((n, v) => n + numbersIn(v), 0)
      : 0;

/** A table, a list of words or one figure that must be the source's own to the last digit. */
export function same(from: Source, what: string, ours: unknown, theirs: unknown): void {
  checked.push({ source: named(from), what, values: Math.max(1, numbersIn(theirs)), off: 0, allowed: 0 });
  expect(ours, `${what}, ${from.publication} (${from.section})`).toEqual(theirs);
}

/** Our figure between two that the source allows, both in it. */
export function between(from: Source, what: string, ours: number, least: number, most: number): void {
  checked.push({ source: named(from), what, values: 1, off: 0, allowed: (most - least) / 2 });
  expect(ours, `${what}, ${from.publication} (${from.section})`).toBeGreaterThanOrEqual(least);
  expect(ours, `${what}, ${from.publication} (${from.section})`).toBeLessThanOrEqual(most);
}

/** Sources that contradict each other: both are shown. Fails where they all say the same. */
export function disagreement(what: string, said: readonly (readonly [Source, number | string])[], ours: string): void {
  const all = said.map(([from, value]) => ({ source: named(from), value }));
  disagreements.push({ what, said: all, ours });
  expect(new Set(all.map(({ value }) => value)).size, `${what}: the sources do not disagree`).toBeGreaterThan(1);
}

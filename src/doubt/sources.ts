import { standardUncertainty, total, type Uncertain } from "./uncertain.ts";

/** What makes a reading doubtful. The first four are new at each reading; the last three belong to a set-up where one is named. */
export const sourceRoles = ["resolution", "placing", "receiver", "slope", "line", "permitted-error", "vial"] as const;
export type SourceRole = (typeof sourceRoles)[number];

export const ofReading = (reading: string, role: SourceRole): string => `reading:${reading}/${role}`;
export const ofSetUp = (setUp: string, role: SourceRole): string => `set-up:${setUp}/${role}`;

export const belongsToReading = (source: string): boolean => source.startsWith("reading:");

const roles: ReadonlySet<string> = new Set(sourceRoles);
const isRole = (name: string): name is SourceRole => roles.has(name);

/** The role of a source that `ofReading` or `ofSetUp` named; undefined for any other. */
export function roleOfSource(source: string): SourceRole | undefined {
  const name = source.slice(source.lastIndexOf("/") + 1);
  return isRole(name) ? name : undefined;
}

export interface Contributor<Name extends string = string> {
  readonly source: Name;
  /** Standard uncertainty it brings, unit of the value, never negative. */
  readonly u: number;
  /** Its part of the square of the whole, 0 to 1. */
  readonly share: number;
}

const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function largestFirst<Name extends string>(squares: ReadonlyMap<Name, number>, whole: number, count: number): Contributor<Name>[] {
  return [...squares]
    .map(([source, square]) => ({ source, u: Math.sqrt(square), share: square / (whole * whole) }))
    .sort((a, b) => b.u - a.u || byCode(a.source, b.source))
    .slice(0, count);
}

/** The `count` sources that bring the most doubt, largest first; equal ones in the order of their names. */
export function contributors(x: Uncertain, count = 3): Contributor[] {
  return largestFirst(new Map([...x.parts].map(([source, part]) => [source, part * part])), standardUncertainty(x), count);
}

/** The same by role over all readings, for saying what would settle a verdict (a finer receiver, a harder place to stand on). */
export function contributingRoles(x: Uncertain, count = 3): Contributor<SourceRole>[] {
  const squares = new Map<SourceRole, number[]>();
  for (const [source, part] of x.parts) {
    const role = roleOfSource(source);
    const known = role && squares.get(role);
    if (known) known.push(part * part);
    else if (role) squares.set(role, [part * part]);
  }
  return largestFirst(new Map([...squares].map(([role, list]) => [role, total(list)])), standardUncertainty(x), count);
}

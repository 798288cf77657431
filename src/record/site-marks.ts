import { expanded, type Uncertain } from "../doubt/index.ts";
import type { FurtherMark, MeasuredMarks, SideSaid } from "../geometry/index.ts";
import type { Tied } from "./tied-points.ts";

/** A mark as the ties call it, with the letter that it has on the drawing. */
export interface SiteMark {
  readonly name: string;
  readonly letter: string;
  /** What the ties say of the mark itself, where it was tied to other marks. */
  readonly tied?: Tied;
}

export interface SitePoints {
  readonly marks: readonly SiteMark[];
  readonly points: readonly Tied[];
}

const LONGEST_LETTER = 3;
const alike = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
const ownLetter = (name: string): string | undefined => {
  const [start = ""] = name.split(",");
  return start.trim().length <= LONGEST_LETTER && start.trim() !== "" ? start.trim() : undefined;
};

/** The letters that the crew painted beside the marks; where two are the same or one is missing, M1, M2 and so on. */
function lettersOf(names: readonly string[]): readonly string[] {
  const own = names.map(ownLetter);
  return new Set(own).size === names.length && own.every((letter) => letter !== undefined)
    ? (own as string[])
    : names.map((_, i) => `M${i + 1}`);
}

/** Marks and points: what was tied and is itself called a mark by another tie is one. */
export function sitePoints(tied: readonly Tied[]): SitePoints {
  const isCalled = ({ name, alsoCalled }: Tied, mark: string): boolean => [name, ...alsoCalled].some((own) => alike(own, mark));
  const names = [...new Set(tied.flatMap(({ ties }) => ties.map(({ mark }) => mark)))];
  const letters = lettersOf(names);
  const marks = names.map((name, i): SiteMark => {
    const own = tied.find((one) => isCalled(one, name));
    return { name, letter: letters[i] ?? name, ...(own ? { tied: own } : {}) };
  });
  return { marks, points: tied.filter((one) => !names.some((name) => isCalled(one, name))) };
}

export interface MarkDistance {
  readonly from: string;
  readonly to: string;
  readonly typed: string;
  readonly distance: Uncertain;
}

/** Distances between two marks, whichever of the two was tied to the other. */
export const markDistances = (marks: readonly SiteMark[]): readonly MarkDistance[] =>
  marks.flatMap(({ name, tied }) =>
    (tied?.ties ?? []).filter(({ mark }) => mark !== name).map(({ mark, typed, distance }) => ({ from: mark, to: name, typed, distance })),
  );

/** A side as the ties of a thing say it. */
export function sideOfTied({ ties, side }: Tied): SideSaid | undefined {
  const [first, second] = ties;
  return side === undefined || first === undefined || second === undefined ? undefined : { from: first.mark, to: second.mark, side };
}

/** The measured marks of a site, from the first two that were measured to each other; undefined where no two were. */
export function measuredMarks(marks: readonly SiteMark[], without: ReadonlySet<string>): MeasuredMarks | undefined {
  const distances = markDistances(marks).filter(({ from, to }) => !without.has(from) && !without.has(to));
  const [base] = distances;
  if (base === undefined) return undefined;
  const between = (a: string, b: string): MarkDistance | undefined =>
    distances
      .filter(({ from, to }) => (from === a && to === b) || (from === b && to === a))
      .sort((one, other) => expanded(one.distance) - expanded(other.distance))[0];
  const further = marks
    .filter(({ name }) => name !== base.from && name !== base.to && !without.has(name))
    .map(({ name, tied }): FurtherMark => {
      const side = tied && sideOfTied(tied);
      const ties = marks.flatMap((other) => {
        const found = other.name === name ? undefined : between(name, other.name);
        return found ? [{ mark: other.name, distance: found.distance }] : [];
      });
      return { name, ties, ...(side ? { side } : {}) };
    });
  return { first: base.from, second: { name: base.to, distance: base.distance }, further };
}

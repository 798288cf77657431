import { certain, type Uncertain, unfitAt } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { placeByTies, type TieConcern } from "./ties.ts";
import type { Mark, SideSaid, Tie } from "./ties-plan.ts";

/** A mark placed from others; the side is needed where its distances alone leave two places. */
export interface FurtherMark {
  readonly name: string;
  readonly ties: readonly Tie[];
  readonly side?: SideSaid;
}

export interface MeasuredMarks {
  /** The mark at the origin. */
  readonly first: string;
  /** The mark on the x axis, and how far from the first, metres. */
  readonly second: { readonly name: string; readonly distance: Uncertain };
  readonly further?: readonly FurtherMark[];
}

export interface MarksNetwork {
  /** First, second, then the further ones as given. */
  readonly marks: readonly Mark[];
  readonly concerns: readonly { readonly mark: string; readonly concerns: readonly TieConcern[] }[];
}

type Placed = Mark & { readonly concerns: readonly TieConcern[] };

function placeFurther(known: readonly Mark[], { name, ties, side }: FurtherMark): Outcome<Placed> {
  const place = placeByTies(known, ties, side);
  if (!place.ok) return place;
  if (place.value.kind === "mirrored")
    return refuse("ties-side-missing", `marks/${name}`, { mark: name, first: place.value.ask.from, second: place.value.ask.to });
  return ok({ name, ...place.value.point, concerns: place.value.concerns });
}

/**
 * The marks of a site from the distances between them, none of which needs to be known from elsewhere: the first is the origin,
 * the second gives the x axis, each further one is placed from two or more that are. In whichever order they were entered. All
 * doubts are against the first two, and what the marks share stays shared in every point tied to them.
 */
export function marksFromDistances({ first, second, further = [] }: MeasuredMarks): Outcome<MarksNetwork> {
  const names = [first, second.name, ...further.map(({ name }) => name)];
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) return refuse("ties-mark-twice", `marks/${twice}`, { mark: twice });
  const bad = unfitAt(`marks/${second.name}`, "positive", second.distance);
  if (bad) return bad;
  const placed = new Map<string, Placed>([
    [first, { name: first, x: certain(0), y: certain(0), concerns: [] }],
    [second.name, { name: second.name, x: second.distance, y: certain(0), concerns: [] }],
  ]);
  const known = (): readonly Placed[] => names.flatMap((name) => placed.get(name) ?? []);
  let waiting = further;
  while (waiting.length > 0) {
    const ready = waiting.filter(({ ties, side }) =>
      [...ties.map(({ mark }) => mark), ...(side ? [side.from, side.to] : [])].every((mark) => placed.has(mark)),
    );
    // none can be placed: the first of them says by which mark
    for (const mark of ready.length > 0 ? ready : waiting.slice(0, 1)) {
      const place = placeFurther(known(), mark);
      if (!place.ok) return place;
      placed.set(mark.name, place.value);
    }
    waiting = waiting.filter(({ name }) => !placed.has(name));
  }
  return ok({
    marks: known().map(({ name, x, y }) => ({ name, x, y })),
    concerns: known().flatMap(({ name, concerns }) => (concerns.length > 0 ? [{ mark: name, concerns }] : [])),
  });
}

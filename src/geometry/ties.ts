import { expanded, unfitAt } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { metres, toMicrometres } from "../units/index.ts";
import { type Consistency, consistencyOf, MOST_TIES } from "./ties-chi-square.ts";
import { type Crossing, crossings, pairsOf } from "./ties-crossing.ts";
import { type Meeting, meetingOf, type Tied } from "./ties-meet.ts";
import {
  apart,
  type ErrorEllipse,
  errorEllipse,
  type Mark,
  type PlanPoint,
  planVector,
  type Side,
  type SideSaid,
  sideOf,
  type Tie,
} from "./ties-plan.ts";
import { type Solution, solveTies } from "./ties-solve.ts";

/** What is doubtful about a place by ties. None of them refuses it. */
export type TieConcern =
  /** Even the best pair of marks crosses below 30 or above 150 degrees. */
  | "poor crossing"
  /** The distances do not fit together within their doubts. */
  | "ties disagree"
  /** The ties alone place it on the other side than was said. */
  | "side differs"
  /** The two mirror places lie within each other's doubt: which side it is on makes no difference that could be dug for. */
  | "mirrors overlap";

export interface TiedPlace {
  readonly point: PlanPoint;
  readonly ellipse: ErrorEllipse;
  /** Measured less computed distance by mark, metres, in the order of the marks. */
  readonly residuals: Solution["residuals"];
  /** Absent for two ties, which nothing checks, and where a tie came without doubt. */
  readonly consistency?: Consistency;
  /** The pair of marks that crosses best. */
  readonly crossing: Crossing;
  readonly concerns: readonly TieConcern[];
}

export type PlaceByTies =
  | ({ readonly kind: "placed"; readonly side: SideSaid } & TiedPlace)
  /** Ask which it is: left or right for someone at `from` who looks to `to`. Never guessed. */
  | {
      readonly kind: "mirrored";
      readonly ask: { readonly from: string; readonly to: string };
      readonly left: TiedPlace;
      readonly right: TiedPlace;
    };

/** Below this sine of the best crossing (about 1 degree, own) the distances say nothing across the line of the marks. */
export const IN_LINE_BELOW = 0.02;
/** A mirror place whose chi-square is worse by more than this is ruled out by the ties: odds of about 90 to 1 (own). */
const RULED_OUT_BEYOND = 9;
/**
 * Of more than two ties a pair may miss by this many times its expanded doubt before it is refused (own): honest work in line
 * with two marks misses by a little half of the time, and up to here the fit tells better.
 */
const MISS_BEYOND = 2;
/** Two places nearer than this are one, metres. */
const SAME_WITHIN = 1e-6;

function tiedMarks(marks: readonly Mark[], ties: readonly Tie[]): Outcome<readonly Tied[]> {
  if (ties.length < 2) return refuse("ties-too-few", "ties", { taken: ties.length, least: 2 });
  if (ties.length > MOST_TIES) return refuse("points-too-many", "ties", { taken: ties.length, most: MOST_TIES });
  for (const { mark, distance } of ties) {
    const place = `ties/${mark}`;
    if (!marks.some(({ name }) => name === mark)) return refuse("ties-mark-unknown", place, { mark });
    if (ties.filter((tie) => tie.mark === mark).length > 1) return refuse("ties-mark-twice", place, { mark });
    const bad = unfitAt(place, "positive", distance);
    if (bad) return bad;
  }
  // in the order of the marks, since entries arrive in any
  return ok(marks.flatMap((mark) => ties.filter((tie) => tie.mark === mark.name).map(({ distance }) => ({ mark, distance }))));
}

type Meet = Extract<Meeting, { kind: "meet" }>;
interface Base {
  readonly first: Tied;
  readonly second: Tied;
  readonly meeting: Meet;
}

/** The pair that crosses best, to start from. Refuses two distances that cannot meet: of more than two, far beyond their doubt. */
function baseOf(ties: readonly Tied[]): Outcome<Base> {
  const bases: Base[] = [];
  for (const [first, second] of pairsOf(ties)) {
    const meeting = meetingOf(first, second);
    if (!meeting.ok) return meeting;
    const found = meeting.value;
    if (found.kind === "meet") bases.push({ first, second, meeting: found });
    else if (ties.length === 2 || found.miss.value > MISS_BEYOND * expanded(found.miss)) {
      const figures = { first: first.mark.name, second: second.mark.name, miss: toMicrometres(metres(found.miss.value)) };
      return refuse("ties-cannot-meet", `ties/${second.mark.name}`, figures);
    }
  }
  const best = bases.reduce<Base | undefined>((a, b) => (a && a.meeting.sine >= b.meeting.sine ? a : b), undefined);
  return best && best.meeting.sine >= IN_LINE_BELOW ? ok(best) : refuse("ties-in-line", "ties");
}

function tiedPlace(ties: readonly Tied[], { point, residuals, chiSquare }: Solution): TiedPlace | undefined {
  const [crossing] = crossings(
    ties.map(({ mark }) => mark),
    point,
  );
  if (!crossing || crossing.sine < IN_LINE_BELOW) return undefined;
  const doubted = ties.every(({ distance }) => distance.parts.size > 0);
  const consistency = doubted ? consistencyOf(chiSquare, residuals) : undefined;
  const concerns: TieConcern[] = [
    ...(crossing.poor ? ["poor crossing" as const] : []),
    ...(consistency && !consistency.agrees ? ["ties disagree" as const] : []),
  ];
  const place = { point, ellipse: errorEllipse(point), residuals, crossing, concerns };
  return consistency ? { ...place, consistency } : place;
}

/** The places that the ties allow, best first: one, or two that they cannot tell apart. */
function allowed(ties: readonly Tied[], { meeting }: Base): readonly Solution[] {
  const solutions = [meeting.left, meeting.right].flatMap((guess) => solveTies(ties, guess) ?? []);
  const [best, other] = solutions.sort((a, b) => a.chiSquare - b.chiSquare);
  if (!best || !other) return best ? [best] : [];
  const same = apart(planVector(best.point), planVector(other.point)) <= SAME_WITHIN;
  return same || other.chiSquare - best.chiSquare > RULED_OUT_BEYOND ? [best] : [best, other];
}

const withConcern = (place: TiedPlace, concern: TieConcern): TiedPlace => ({ ...place, concerns: [...place.concerns, concern] });

/**
 * Where a buried point lies, from two or more level distances to marks. Two ties, or more to marks in one line, give two mirror
 * places: both come back with the line to ask about, unless `said` (the design, or a person) picks one. Three and more are
 * fitted by least squares, with residuals and whether they fit together. + − × ÷ and square roots only, the whole degrees of
 * the crossing included.
 *
 * Refuses fewer than two or more than 12 ties, a mark that is unknown or there twice, distances that are not positive, that
 * cannot meet (with the miss in micrometres), or that say nothing across the line of the marks.
 */
export function placeByTies(marks: readonly Mark[], ties: readonly Tie[], said?: SideSaid): Outcome<PlaceByTies> {
  const tied = tiedMarks(marks, ties);
  if (!tied.ok) return tied;
  const [from, to] = [said?.from, said?.to].map((name) => marks.find((mark) => mark.name === name));
  if (said && (!from || !to)) return refuse("ties-mark-unknown", "side", { mark: from ? said.to : said.from });
  const base = baseOf(tied.value);
  if (!base.ok) return base;
  const solutions = allowed(tied.value, base.value);
  if (solutions.length === 0) return refuse("ties-not-settled", "ties");
  const places = solutions.flatMap((solution) => tiedPlace(tied.value, solution) ?? []);
  const [one, other] = places;
  if (!one || places.length < solutions.length) return refuse("ties-in-line", "ties");
  const [a, b] = [base.value.first.mark, base.value.second.mark];
  const sideBy = (place: TiedPlace, start: Mark, end: Mark): Side => sideOf(planVector(start), planVector(end), planVector(place.point));
  const placed = (place: TiedPlace): PlaceByTies => ({
    kind: "placed",
    side: { from: a.name, to: b.name, side: sideBy(place, a, b) },
    ...place,
  });
  const fits = (place: TiedPlace): boolean =>
    said !== undefined && from !== undefined && to !== undefined && sideBy(place, from, to) === said.side;
  if (!other) return ok(placed(said && !fits(one) ? withConcern(one, "side differs") : one));
  const between = apart(planVector(one.point), planVector(other.point));
  const near = between < 4 * Math.max(one.ellipse.semiMajor, other.ellipse.semiMajor);
  const both = near ? [withConcern(one, "mirrors overlap"), withConcern(other, "mirrors overlap")] : [one, other];
  const [picked, second] = both.filter(fits);
  if (picked && !second) return ok(placed(picked));
  const sides = both.map((place) => ({ place, side: sideBy(place, a, b) }));
  const [left, right] = (["left", "right"] as const).map((side) => sides.find((s) => s.side === side)?.place);
  if (!left || !right) return refuse("ties-in-line", "ties");
  return ok({ kind: "mirrored", ask: { from: a.name, to: b.name }, left, right });
}

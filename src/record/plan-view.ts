import { type PlacedPoint, type PlaceOnPlan, type PointOnPlan, type SitePlaced, sitePlaced, type TiedThing } from "../job/index.ts";
import type { Refusal } from "../outcome/index.ts";
import { basinOutline, directionAt, lineBearing } from "./basin-outline.ts";
import type { Context } from "./context.ts";
import { type DrawnTie, type PlanToDraw, planDrawing } from "./drawing/plan-drawing.ts";
import { doubtText } from "./figures-text.ts";
import type { PlanView, TiedView } from "./model-drawn.ts";
import { type SayArithmetic, sayArithmetic } from "./say-arithmetic.ts";
import { lettersOf, tiedName, tieTyped } from "./tied-points.ts";

/** What the plan's words are made with. */
interface Saying {
  readonly context: Context;
  readonly say: SayArithmetic;
  readonly letterOf: (mark: string) => string;
  readonly length: (micrometres: number) => string;
  readonly refusal: (of: Refusal) => string;
}

function tiesText({ context, say, letterOf }: Saying, { ties, side }: TiedThing): string {
  const distances = ties.map((tie) => say("plan.tie", { mark: letterOf(tie.mark), distance: tieTyped(context, tie) }));
  const lies = side === undefined ? [] : [say(`plan.${side.side}`, { from: letterOf(side.from), to: letterOf(side.to) })];
  return [...distances, ...lies].join("; ");
}

function doubtSaid({ say, length }: Saying, { ellipse: { major, minor } }: PlaceOnPlan): string {
  return say("plan.placed", { doubt: length(major), least: length(minor) });
}

/** How well a point is placed, and by which pair of marks. */
function placeSaid(saying: Saying, point: PlacedPoint): string {
  const { say, letterOf } = saying;
  const { first, second, degrees } = point.crossing;
  const crosses = say("plan.crosses", { first: letterOf(first), second: letterOf(second), angle: String(degrees) });
  return [doubtSaid(saying, point), crosses, ...point.concerns.map((concern) => say(`concern.${concern}`))].join("; ");
}

/** What a mark is, without the letter that stands beside it already. */
const markName = (sign: string, { name, tag }: SitePlaced["marks"][number]): string =>
  tag?.tag === sign && tag.description !== undefined ? tag.description : name;

function markRow(saying: Saying, { plan }: SitePlaced, mark: SitePlaced["marks"][number]): TiedView {
  const { say, letterOf } = saying;
  const { name, tied } = mark;
  const at = plan?.marks.findIndex((one) => one.name === name) ?? -1;
  const drawn = plan?.marks[at];
  const fixed = [say("plan.origin"), say("plan.level")][at];
  const place = drawn === undefined ? say("plan.not-drawn") : (fixed ?? doubtSaid(saying, drawn));
  return { sign: letterOf(name), name: markName(letterOf(name), mark), ties: tied ? tiesText(saying, tied) : "", place };
}

function pointRow(saying: Saying, point: TiedThing, drawn: PointOnPlan | undefined, at: number): TiedView {
  const place = drawn?.state === "placed" ? placeSaid(saying, drawn) : saying.say("plan.not-drawn");
  return { sign: String(at + 1), name: tiedName(saying.context, point), ties: tiesText(saying, point), place };
}

/** Why a mark or a point is not drawn. */
function notesOf({ context, say, letterOf, refusal: said }: Saying, site: SitePlaced): readonly string[] {
  const { plan, left, refusal, marks, points } = site;
  if (plan === undefined)
    return [refusal === undefined ? say("plan.no-distances") : said(refusal), ...left.map((one) => said(one.refusal))];
  const known = new Set([...plan.marks.map(({ name }) => name), ...left.map(({ mark }) => mark)]);
  return [
    ...left.map((one) => said(one.refusal)),
    ...marks.filter(({ name }) => !known.has(name)).map(({ name }) => say("plan.mark-apart", { mark: letterOf(name) })),
    ...plan.points.flatMap((point, i) => {
      const thing = points[i];
      const name = thing === undefined ? "" : tiedName(context, thing);
      if (point.state === "refused") return [`${name}: ${said(point.refusal)}`];
      if (point.state === "placed") return [];
      return [say("plan.mirrored", { point: name, from: letterOf(point.ask.from), to: letterOf(point.ask.to) })];
    }),
  ];
}

function toDraw(saying: Saying, { marks, points, distances, plan }: SitePlaced): Pick<PlanToDraw, "marks" | "points" | "ties"> {
  const { context, letterOf } = saying;
  const ties: readonly DrawnTie[] = [
    ...distances.map(({ from, to, tie }) => ({ from: letterOf(from), to: letterOf(to), text: tieTyped(context, tie) })),
    ...points.flatMap(({ ties: own }, i) =>
      own.map((tie) => ({ from: letterOf(tie.mark), to: String(i + 1), text: tieTyped(context, tie) })),
    ),
  ];
  return {
    marks: (plan?.marks ?? []).map((mark) => ({ ...mark, letter: letterOf(mark.name) })),
    points: (plan?.points ?? []).flatMap((point, i) => {
      const thing = points[i];
      if (point.state !== "placed" || thing === undefined) return [];
      return [{ ...point, number: String(i + 1), name: tiedName(context, thing), drawnAs: thing.item.drawnAs ?? "joint" }];
    }),
    ties: ties.filter(({ from, to }) => from !== to && marks.length > 0),
  };
}

/** The plan of marks and buried points as the job's ties have it; undefined where nothing was tied. */
export function planView(context: Context): PlanView | undefined {
  const site = sitePlaced(context.state, "all");
  const { marks, points, plan } = site;
  if (marks.length + points.length === 0) return undefined;
  const { units } = context.settings;
  const say = sayArithmetic(context.language);
  const letters = lettersOf(marks);
  const saying: Saying = {
    context,
    say,
    letterOf: (name) => letters.get(name) ?? name,
    length: (micrometres) => doubtText("length", micrometres, { lengths: units }),
    refusal: context.sayer.refusal,
  };
  const tied = [
    ...marks.map((mark) => markRow(saying, site, mark)),
    ...points.map((point, at) => pointRow(saying, point, plan?.points[at], at)),
  ];
  const notes = notesOf(saying, site);
  if (plan === undefined) return { tied, notes };
  const { basin, note } = basinOutline(context, site);
  const bearing = lineBearing(context);
  const drawing = planDrawing(
    {
      ...toDraw(saying, site),
      ...(basin ? { basin } : {}),
      ...(bearing === undefined ? {} : { north: { bearing: String(bearing), along: directionAt(bearing) } }),
      units,
    },
    say,
  );
  const all = [...notes, ...(note === undefined ? [] : [say(note)])];
  return drawing.ok ? { drawing: drawing.value, tied, notes: all } : { tied, notes: [...all, saying.refusal(drawing.refusal)] };
}

import { type PlacedPoint, type PointOnPlan, type SitePlan, sitePlan } from "../job/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { Context } from "./context.ts";
import { type DrawnTie, planDrawing } from "./drawing/plan-drawing.ts";
import { doubtText } from "./figures-text.ts";
import type { PlanView, TiedView } from "./model-drawn.ts";
import { type SayArithmetic, sayArithmetic } from "./say-arithmetic.ts";
import { markDistances, measuredMarks, type SiteMark, type SitePoints, sideOfTied, sitePoints } from "./site-marks.ts";
import { type Tied, tiedIn } from "./tied-points.ts";

interface Attempt {
  readonly plan?: SitePlan;
  /** Marks that were left out, each with why. */
  readonly left: readonly { readonly mark: string; readonly refusal: Refusal }[];
  /** Why there is no plan, where distances between marks are there. */
  readonly refusal?: Refusal;
}

const isTiedToAny = (marks: readonly SiteMark[], name: string): boolean =>
  markDistances(marks).some(({ from, to }) => from === name || to === name);

/** The plan of as many marks as can be placed: one that cannot is left out, with what it lacks. */
function placeAll({ marks, points }: SitePoints): Attempt {
  const without = new Set(marks.filter(({ name }) => !isTiedToAny(marks, name)).map(({ name }) => name));
  const left: { readonly mark: string; readonly refusal: Refusal }[] = [];
  for (;;) {
    const measured = measuredMarks(marks, without);
    if (measured === undefined) return { left };
    const tied = points.map((point) => {
      const side = sideOfTied(point);
      return { name: point.name, ties: point.ties.filter(({ mark }) => !without.has(mark)), ...(side ? { side } : {}) };
    });
    const plan = sitePlan(measured, tied);
    if (plan.ok) return { plan: plan.value, left };
    const { refusal } = plan;
    const further = measured.further ?? [];
    const failing = further.find(({ name }) => refusal.figures.mark === name) ?? further.at(-1);
    if (failing === undefined) return { left, refusal };
    without.add(failing.name);
    left.push({ mark: failing.name, refusal });
  }
}

/** What the plan's words are made with. */
interface Saying {
  readonly say: SayArithmetic;
  readonly letterOf: (mark: string) => string;
  readonly length: (micrometres: number) => string;
  readonly refusal: (of: Refusal) => string;
}

const tiesText = ({ say, letterOf }: Saying, { ties }: Tied): string =>
  ties.map(({ mark, typed }) => say("plan.tie", { mark: letterOf(mark), distance: typed })).join("; ");

function doubtSaid({ say, length }: Saying, { major, minor }: PlacedPoint["ellipse"]): string {
  return say("plan.placed", { doubt: length(major), least: length(minor) });
}

function markRow(saying: Saying, plan: SitePlan | undefined, { name, letter, tied }: SiteMark): TiedView {
  const { say } = saying;
  const place = plan?.marks.findIndex((mark) => mark.name === name) ?? -1;
  const drawn = plan?.marks[place];
  const fixed = [say("plan.origin"), say("plan.level")][place];
  const placed = drawn === undefined ? say("plan.not-drawn") : (fixed ?? doubtSaid(saying, drawn.ellipse));
  return { sign: letter, name, ties: tied ? tiesText(saying, tied) : "", place: placed };
}

function pointRow(saying: Saying, point: Tied, drawn: PointOnPlan | undefined, at: number): TiedView {
  const { say } = saying;
  const placed =
    drawn?.state === "placed"
      ? [doubtSaid(saying, drawn.ellipse), ...drawn.concerns.map((concern) => say(`concern.${concern}`))].join("; ")
      : say("plan.not-drawn");
  return { sign: String(at + 1), name: point.name, ties: tiesText(saying, point), place: placed };
}

/** Why a mark or a point is not drawn. */
function notesOf(
  { say, letterOf, refusal: said }: Saying,
  marks: readonly SiteMark[],
  { plan, left, refusal }: Attempt,
): readonly string[] {
  if (plan === undefined)
    return [refusal === undefined ? say("plan.no-distances") : said(refusal), ...left.map((one) => said(one.refusal))];
  const known = new Set([...plan.marks.map(({ name }) => name), ...left.map(({ mark }) => mark)]);
  return [
    ...left.map((one) => said(one.refusal)),
    ...marks.filter(({ name }) => !known.has(name)).map(({ letter }) => say("plan.mark-apart", { mark: letter })),
    ...plan.points.flatMap((point) => {
      if (point.state === "refused") return [`${point.name}: ${said(point.refusal)}`];
      if (point.state === "placed") return [];
      return [say("plan.mirrored", { point: point.name, from: letterOf(point.ask.from), to: letterOf(point.ask.to) })];
    }),
  ];
}

/** The plan of marks and buried points as the job's ties have it; undefined where nothing was tied. */
export function planView(context: Context): PlanView | undefined {
  const tied = tiedIn(context);
  if (tied.length === 0) return undefined;
  const { units } = context.settings;
  const site = sitePoints(tied);
  const { marks, points } = site;
  const say = sayArithmetic(context.language);
  const saying: Saying = {
    say,
    letterOf: (name) => marks.find((mark) => mark.name === name)?.letter ?? name,
    length: (micrometres) => doubtText("length", micrometres, { lengths: units }),
    refusal: context.sayer.refusal,
  };
  const attempt = placeAll(site);
  const { plan } = attempt;
  const rows = [
    ...marks.map((mark) => markRow(saying, plan, mark)),
    ...points.map((point, at) => pointRow(saying, point, plan?.points[at], at)),
  ];
  const notes = notesOf(saying, marks, attempt);
  if (plan === undefined) return { tied: rows, notes };
  const drawing = planDrawing({ ...toDraw(saying, site, plan), units }, say);
  return drawing.ok ? { drawing: drawing.value, tied: rows, notes } : { tied: rows, notes: [...notes, saying.refusal(drawing.refusal)] };
}

function toDraw({ letterOf }: Saying, { marks, points }: SitePoints, plan: SitePlan) {
  const ties: readonly DrawnTie[] = [
    ...markDistances(marks).map(({ from, to, typed }) => ({ from: letterOf(from), to: letterOf(to), text: typed })),
    ...points.flatMap((point, i) => point.ties.map(({ mark, typed }) => ({ from: letterOf(mark), to: String(i + 1), text: typed }))),
  ];
  return {
    marks: plan.marks.map((mark) => ({ ...mark, letter: letterOf(mark.name) })),
    points: plan.points.flatMap((point, i) => (point.state === "placed" ? [{ ...point, number: String(i + 1) }] : [])),
    ties,
  };
}

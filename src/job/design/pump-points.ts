import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import type { PumpPoint } from "../../plumbing/index.ts";
import { readQuantity } from "../../reading/index.ts";
import { fixedPerSi } from "../../units/index.ts";

const PLACE = "figures/pumpCurve";
/** What may stand between the two quantities of a point: after the unit of the first, before a digit of the second. */
const between = /(?<=[\p{L}'"’”′″])[\s,:@]+(?:(?:at|a)\s+)?(?=\d)/giu;

interface Half {
  readonly text: string;
  /** 0-based column in the whole text. */
  readonly start: number;
}

function quantityOf({ text, start }: Half, kind: "flow" | "length", place: string): Outcome<number> {
  const read = readQuantity(text, { kind, unit: kind === "flow" ? "gpm" : "ft", place });
  if (read.ok) return ok(read.value.value / fixedPerSi(kind));
  const { column, ...refusal } = read.refusal;
  return { ok: false, refusal: column === undefined ? refusal : { ...refusal, column: column + start } };
}

/** The two halves as flow and head, in whichever order they stand. */
function pointFrom(left: Half, right: Half, place: string): Outcome<PumpPoint> {
  const [flowHalf, headHalf] = quantityOf(left, "flow", place).ok || quantityOf(right, "length", place).ok ? [left, right] : [right, left];
  const flow = quantityOf(flowHalf, "flow", place);
  if (!flow.ok) return flow;
  const head = quantityOf(headHalf, "length", place);
  return head.ok ? ok({ flow: flow.value, head: head.value }) : head;
}

function pointOf(text: string, start: number, place: string): Outcome<PumpPoint> {
  const ways = [...text.matchAll(between)].map(({ 0: gap, index }) =>
    pointFrom({ text: text.slice(0, index), start }, { text: text.slice(index + gap.length), start: start + index + gap.length }, place),
  );
  return ways.find((way) => way.ok) ?? ways[0] ?? refuse("pump-curve-text", place, { found: text }, start + 1);
}

/**
 * The points of a pump's curve from the text of its kit card: `0 gpm 24 ft; 20 gpm 21 ft; 77 gpm 0 ft`, `0 L/min 7.3 m; ...`, flow
 * or head first, each with its unit. m³/s and metres. Refuses a point that is no pair, and numbers and units that cannot be read, by
 * the point and the column; how many points there must be is the curve's own matter (`pumpCurve`).
 */
export function pumpPoints(text: string): Outcome<readonly PumpPoint[]> {
  const points: PumpPoint[] = [];
  let start = 0;
  for (const piece of text.split(/[;\n]/)) {
    if (piece.trim() !== "") {
      const point = pointOf(piece.trim(), start + piece.length - piece.trimStart().length, `${PLACE}/${points.length}`);
      if (!point.ok) return point;
      points.push(point.value);
    }
    start += piece.length + 1;
  }
  return ok(points);
}

import { add, certain, combine, faultIn, product, refused, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * Water that is away from the basin while the falls run.
 *
 *   V_t = Σ l w d  +  Σ A_p h  +  V_pipe
 *
 *   l, w, d  one piece of falls or stream: length, width, depth of water, m
 *   A_p, h   pool behind a lip, m², and the head over the lip, m: at rest its water stands at the lip
 *   V_pipe   contents of the pipe, m³; counts only where the pipe drains back at rest (a check valve keeps it full)
 *
 * Source: own. Expected accuracy: 30 % for falls and stream, whose depth is a guess until the draw-down is measured.
 */
export interface StreamPiece {
  readonly length: Uncertain;
  readonly width: Uncertain;
  readonly depth: Uncertain;
}
export interface PoolBehindLip {
  readonly area: Uncertain;
  readonly head: Uncertain;
}
export interface PipeWater {
  readonly contents: Uncertain;
  /** The pipe stays full at rest: it has a check valve that closes. */
  readonly staysFull: boolean;
}

export interface Watercourse {
  readonly pieces: readonly StreamPiece[];
  readonly pools: readonly PoolBehindLip[];
  readonly pipe?: PipeWater;
}

export interface InTransit {
  readonly stream: Uncertain;
  readonly pools: Uncertain;
  /** What drains back out of the pipe at rest; zero where it stays full. */
  readonly pipe: Uncertain;
  readonly whole: Uncertain;
}

const sumOf = (list: readonly Uncertain[]): Uncertain => combine(list.map((of) => ({ times: 1, of })));

/** Water in transit by where it is, m³ each. Refuses sizes below zero, and lengths, widths and areas of zero. */
export function waterInTransit({ pieces, pools, pipe }: Watercourse): Outcome<InTransit> {
  for (const [i, { length, width, depth }] of pieces.entries()) {
    const fault = faultIn(`stream/${i}`, { length: [length, "positive"], width: [width, "positive"], depth: [depth, "not negative"] });
    if (fault) return refused(fault);
  }
  for (const [i, { area, head }] of pools.entries()) {
    const fault = faultIn(`pool/${i}`, { area: [area, "positive"], head: [head, "not negative"] });
    if (fault) return refused(fault);
  }
  const fault = faultIn("pipe", { contents: [pipe?.contents, "not negative"] });
  if (fault) return refused(fault);
  const stream = sumOf(pieces.map(({ length, width, depth }) => product(length, product(width, depth))));
  const behindLips = sumOf(pools.map(({ area, head }) => product(area, head)));
  const fromPipe = pipe === undefined || pipe.staysFull ? certain(0) : pipe.contents;
  return ok({ stream, pools: behindLips, pipe: fromPipe, whole: add(add(stream, behindLips), fromPipe) });
}

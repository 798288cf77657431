import { add, certain, expanded, subtract, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { inches } from "../units/index.ts";
import type { PipeSize } from "./pipe-sizes.ts";

/** The witness mark stands this far beyond the socket depth, metres: near enough to read, clear of cement (own). */
export const WITNESS_MARK_BEYOND: number = inches(2);

export interface SocketDimensions {
  /** All in inches. Diameter at the entrance and at the bottom, and its tolerance. */
  readonly entrance: number;
  readonly bottom: number;
  readonly tolerance: number;
  /** Least depth of a Schedule 40 socket (ASTM D2466) and of a Schedule 80 socket (ASTM D2467). */
  readonly leastDepth40: number;
  readonly leastDepth80: number;
}

/**
 * Tapered pressure sockets by ASTM D2466 and D2467, quoted on page 15 of a PVC pipe maker's technical manual. The taper stops a dry
 * pipe part-way in: a 2 in pipe of 2.375 in has 0.012 in of play at the entrance and is 0.006 in too thick for the bottom.
 */
export const socketDimensions: Readonly<Record<PipeSize, SocketDimensions>> = {
  "1/2": { entrance: 0.848, bottom: 0.836, tolerance: 0.004, leastDepth40: 0.688, leastDepth80: 0.875 },
  "3/4": { entrance: 1.058, bottom: 1.046, tolerance: 0.004, leastDepth40: 0.719, leastDepth80: 1 },
  "1": { entrance: 1.325, bottom: 1.31, tolerance: 0.005, leastDepth40: 0.875, leastDepth80: 1.125 },
  "1-1/4": { entrance: 1.67, bottom: 1.655, tolerance: 0.005, leastDepth40: 0.938, leastDepth80: 1.25 },
  "1-1/2": { entrance: 1.912, bottom: 1.894, tolerance: 0.006, leastDepth40: 1.094, leastDepth80: 1.375 },
  "2": { entrance: 2.387, bottom: 2.369, tolerance: 0.006, leastDepth40: 1.156, leastDepth80: 1.5 },
  "2-1/2": { entrance: 2.889, bottom: 2.868, tolerance: 0.007, leastDepth40: 1.75, leastDepth80: 1.75 },
  "3": { entrance: 3.516, bottom: 3.492, tolerance: 0.008, leastDepth40: 1.875, leastDepth80: 1.875 },
  "4": { entrance: 4.518, bottom: 4.491, tolerance: 0.009, leastDepth40: 2, leastDepth80: 2.25 },
};

/** Where the witness mark goes, metres from the pipe's end: the depth measured with a dry tape in the fitting's own socket, plus 2 in. */
export function witnessMark(socketDepth: Uncertain): Outcome<Uncertain> {
  const bad = unfit("socket", "positive", { depth: socketDepth });
  return bad ?? ok(add(socketDepth, certain(WITNESS_MARK_BEYOND)));
}

export interface Insertion {
  /** How far the pipe went in, metres. */
  readonly depth: Uncertain;
  /** How much is missing to the bottom of the socket, metres; negative where the mark stands nearer than 2 in. */
  readonly short: Uncertain;
}

/**
 * Insertion of a joint, metres, from the distance between witness mark and socket's face after assembly (`markToSocket`) and the
 * socket's depth. `markAt` is where the mark was drawn from the pipe's end; absent, at the depth plus 2 in, and the doubt of the
 * depth then leaves what is short untouched. Refuses a distance longer than the mark stands from the end.
 */
export function insertion(socketDepth: Uncertain, markToSocket: Uncertain, markAt?: Uncertain): Outcome<Insertion> {
  const bad =
    unfit("socket", "positive", { depth: socketDepth, ...(markAt && { markAt }) }) ?? unfit("socket", "not negative", { markToSocket });
  if (bad) return bad;
  const mark = markAt ?? add(socketDepth, certain(WITNESS_MARK_BEYOND));
  if (markToSocket.value > mark.value) return refuse("socket-mark-beyond", "socket/markToSocket");
  const depth = subtract(mark, markToSocket);
  return ok({ depth, short: subtract(socketDepth, depth) });
}

export interface SocketStandard {
  readonly standard: "Schedule 40, ASTM D2466" | "Schedule 80, ASTM D2467";
  /** Metres. */
  readonly leastDepth: number;
  /** Measured less least, metres. */
  readonly over: Uncertain;
  readonly against: "at least" | "less" | "too close to call";
}

/**
 * A measured socket depth beside both standards' least depths: whether it is plausible, never a limit that holds. Less than both:
 * the tape did not reach the bottom, or the fitting is no pressure fitting (drainage fittings have their own depths).
 */
export function socketStandards(size: PipeSize, measured: Uncertain): Outcome<readonly SocketStandard[]> {
  const bad = unfit("socket", "positive", { depth: measured });
  if (bad) return bad;
  const { leastDepth40, leastDepth80 } = socketDimensions[size];
  const beside = (standard: SocketStandard["standard"], least: number): SocketStandard => {
    const leastDepth = inches(least);
    const over = subtract(measured, certain(leastDepth));
    const doubt = expanded(over);
    const against = over.value < -doubt ? "less" : over.value >= doubt ? "at least" : "too close to call";
    return { standard, leastDepth, over, against };
  };
  return ok([beside("Schedule 40, ASTM D2466", leastDepth40), beside("Schedule 80, ASTM D2467", leastDepth80)]);
}

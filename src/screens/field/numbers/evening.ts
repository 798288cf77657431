import type { LeavingTonight, NightLine } from "../../../job/index.ts";
import type { Shape } from "../../parts/shapes.ts";
import { hourAt } from "./site-time.ts";

/** From this hour of the site's clock on the first page reminds of the night (own). */
const REMINDS_FROM = 15;

/** A line that nobody needs to do anything about: it is entered as wanted, or a clock runs by itself. */
export const isSettled = ({ state }: Pick<NightLine, "state">): boolean => state === "entered" || state === "waits";

/** How many lines of tonight are still to settle, once it is late enough to ask; 0 with nothing open. */
export function toSettle({ open, lines }: Pick<LeavingTonight, "open" | "lines">, now: number, zone: string): number {
  if (open.length === 0 || hourAt(now, zone) < REMINDS_FROM) return 0;
  return lines.filter((line) => !isSettled(line)).length;
}

const shapes: Readonly<Record<NightLine["state"], Shape>> = {
  entered: "within",
  missing: "missing",
  "not so": "outside",
  "look again": "undecided",
  waits: "missing",
};

/** Entered with something of it still missing is drawn as taken, not as all done. */
export const shapeOfNight = ({ state, missing }: Pick<NightLine, "state" | "missing">): Shape =>
  state === "entered" && missing.length > 0 ? "apart" : shapes[state];

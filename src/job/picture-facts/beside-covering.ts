import type { Figures } from "../../outcome/index.ts";
import { type Covered, coveredOf } from "../covered.ts";
import { isInstant, type Live } from "../live.ts";
import { coveringHeld, type Instance, oneOfHolding } from "../series.ts";
import type { JobState } from "../state.ts";
import { doubtOf, halfOf, middle, type PictureTime, pictureTime, type Stretch } from "./picture-time.ts";

/** What a time is worth that was said later than it happened (own). */
const SAID_LATER_MS = 15 * 60_000;
const MINUTE_MS = 60_000;

/** Clocks of two phones that never met the edge's, one of them at least, cannot be put beside each other. */
const areComparable = (one: Live, other: Live): boolean =>
  one.entry.author.phone === other.entry.author.phone || [one, other].every(({ entry }) => entry.sent !== undefined);

/** A picture beside the covering that hides what it shows. */
export interface BesideCovering {
  readonly order: "before" | "after" | "cannot be told" | "covering inferred" | "received otherwise";
  readonly covered: Covered;
  readonly covering: Stretch;
  readonly time: PictureTime;
}

/** The covering that hides what an item shows: what it holds, or what the 'one of' that it stands in holds. */
export function hiddenBy(state: JobState, { item, tag }: Instance): string | undefined {
  const one = state.sheet && oneOfHolding(state.sheet, item.id);
  return one?.holds ?? (item.weight === "holds" ? coveringHeld(state, item, item.tags, tag) : undefined);
}

function stretchOf({ fact, at }: Covered): Stretch {
  const saidLater = isInstant(fact.what.at) && Math.abs(fact.entry.made - fact.what.at) > MINUTE_MS;
  const doubt = doubtOf(fact) + (saidLater ? SAID_LATER_MS : 0);
  return { earliest: at - doubt, latest: at + doubt };
}

/**
 * Whether a picture was taken before or after what it shows was hidden; undefined while nothing hides it. Only times that
 * leave no doubt say so. A covering that is inferred happened no later than its entry, nobody knows when, and a picture
 * received otherwise proves no order: neither is told.
 */
export function besideCovering(state: JobState, instance: Instance, picture: Live): BesideCovering | undefined {
  const covered = coveredOf(state, hiddenBy(state, instance));
  if (covered === undefined) return undefined;
  const [covering, time] = [stretchOf(covered), pictureTime(state, picture)];
  const order = (): BesideCovering["order"] => {
    if (picture.kind === "received-otherwise") return "received otherwise";
    if (covered.noLaterThan) return "covering inferred";
    if (!areComparable(picture, covered.fact)) return "cannot be told";
    if (time.latest <= covering.earliest) return "before";
    return time.earliest > covering.latest ? "after" : "cannot be told";
  };
  return { order: order(), covered, covering, time };
}

/** Both times with their doubts, ms. A picture's stretch without a beginning has its end alone. */
export function timesOf({ time, covering }: Pick<BesideCovering, "time" | "covering">): Figures {
  const taken: Figures = Number.isFinite(time.earliest)
    ? { takenInstant: middle(time), takenDoubtDuration: halfOf(time) }
    : { takenInstant: Math.round(time.latest) };
  return { ...taken, coveredInstant: middle(covering), coveredDoubtDuration: halfOf(covering) };
}

import { momentAt, momentOf, type Taken } from "../../photo/index.ts";
import { isInstant, type Live } from "../live.ts";
import type { JobState } from "../state.ts";
import { photosRead, wallClock } from "./photo-read.ts";
import { offsetsWhenRead } from "./site-zone.ts";

/** How far a camera's clock may be off without anybody noticing (own). A phone's clock is set by its network, a camera's by hand. */
export const CAMERA_DOUBT_MS = 5 * 60_000;

/** A stretch of time that something happened in, ms by the edge's clock, both ends in it. */
export interface Stretch {
  readonly earliest: number;
  readonly latest: number;
}

/** When a picture was taken, as well as its times tell. */
export interface PictureTime extends Stretch {
  /** `entry`: nothing but that it was there when it was entered. */
  readonly from: "app" | "camera" | "entry";
  /** How the camera's clock stands to the rest: `either`: its zone is not known, and no zone of the site makes it agree. */
  readonly camera: "agrees" | "earlier" | "later" | "either" | "silent";
  /** What the app's own capture moment is worth, where there is one. */
  readonly app?: Stretch;
  readonly taken?: Taken;
}

export const doubtOf = ({ doubt }: Live): number => Math.ceil(2 * doubt);
const about = (at: number, doubt: number): Stretch => ({ earliest: at - doubt, latest: at + doubt });
/** The middle of a stretch and half of its length, whole ms. */
export const middle = ({ earliest, latest }: Stretch): number => Math.round((earliest + latest) / 2);
export const halfOf = ({ earliest, latest }: Stretch): number => Math.ceil((latest - earliest) / 2);
const meet = (one: Stretch, other: Stretch): boolean => one.earliest <= other.latest && other.earliest <= one.latest;

/** The app's own moment; no picture was taken after its entry was made. */
function appMoment(fact: Live): Stretch | undefined {
  const { taken } = fact.what;
  if (fact.kind !== "picture-taken" || !isInstant(taken)) return undefined;
  return about(Math.min(fact.at, fact.at + (taken - fact.entry.made)), doubtOf(fact));
}

/** The camera may be the phone's own, whose clock is off by as much as the phone's, or another: both are allowed for. */
function widened({ earliest, latest }: Stretch, { kind, at, entry }: Live): Stretch {
  const off = kind === "picture-taken" ? at - entry.made : 0;
  return { earliest: earliest + Math.min(0, off) - CAMERA_DOUBT_MS, latest: latest + Math.max(0, off) + CAMERA_DOUBT_MS };
}

/** The stretches that a clock of unknown zone means if it stood in the site's, the earlier first: two in the hour that comes twice. */
export function inSiteZone(state: JobState, taken: Taken): readonly Stretch[] {
  const asUtc = wallClock(taken.text);
  if (taken.offset !== undefined || asUtc === undefined || state.opened === undefined) return [];
  return offsetsWhenRead(asUtc, state.opened.zone).map((offset) => momentAt(taken, [offset]));
}

function besideApp(state: JobState, fact: Live, taken: Taken, app: Stretch): PictureTime {
  const camera = widened(momentOf(taken), fact);
  const ownTime = { ...app, from: "app", app, taken } as const;
  if (camera.earliest > app.latest) return { ...ownTime, camera: "later" };
  if (camera.latest < app.earliest) return { ...camera, from: "camera", camera: "earlier", app, taken };
  if (taken.offset !== undefined || inSiteZone(state, taken).some((stretch) => meet(widened(stretch, fact), app)))
    return { ...ownTime, camera: "agrees" };
  return { earliest: camera.earliest, latest: app.latest, from: "camera", camera: "either", app, taken };
}

/**
 * When a picture was taken: the app's own moment where the camera's clock bears it out or says nothing; the camera's where that
 * is earlier, for a picture may be older than the moment at which it was put in. A camera's time after it was put in is a
 * clock that is off, and counts for nothing.
 */
export function pictureTime(state: JobState, fact: Live): PictureTime {
  const taken = photosRead(state, "all").get(String(fact.what.photo))?.taken;
  const app = appMoment(fact);
  if (taken && app) return besideApp(state, fact, taken, app);
  if (app) return { ...app, from: "app", camera: "silent", app };
  const there = fact.at + doubtOf(fact);
  const nothing = { earliest: Number.NEGATIVE_INFINITY, latest: there, from: "entry" } as const;
  if (taken === undefined) return { ...nothing, camera: "silent" };
  const camera = widened(momentOf(taken), fact);
  if (camera.earliest > there) return { ...nothing, camera: "later", taken };
  const latest = Math.min(camera.latest, there);
  return { earliest: camera.earliest, latest, from: "camera", camera: taken.offset === undefined ? "either" : "agrees", taken };
}

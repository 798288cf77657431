import { momentOf, type Taken } from "../../photo/index.ts";
import { happenedAt, type Live } from "../live.ts";
import { entersItem, type Instance } from "../series.ts";
import type { JobState } from "../state.ts";
import { besideCovering, timesOf } from "./beside-covering.ts";
import { photosRead } from "./photo-read.ts";
import { contra, neither, type PictureLine, pro } from "./picture-line.ts";
import { halfOf, inSiteZone, middle, type PictureTime, pictureTime, type Stretch } from "./picture-time.ts";

const FIVE_MINUTES_MS = 300_000;
/** How far before the first or after the last other entry of its step a picture still lies among them (own). */
const AMONG_MS = 30 * 60_000;

/** The phone's clock beside the edge's. */
function clockLines({ at, entry, kind }: Live): readonly PictureLine[] {
  if (kind !== "picture-taken") return [];
  if (entry.sent === undefined) return [neither("clock-not-compared")];
  const off = Math.round(Math.abs(at - entry.made));
  return off > FIVE_MINUTES_MS ? [neither("clock-off", { offDuration: off })] : [];
}

function appLines({ app }: PictureTime, fact: Live): readonly PictureLine[] {
  if (app) return [pro("app-moment", { takenInstant: middle(app), takenDoubtDuration: halfOf(app) })];
  return fact.kind === "received-otherwise" ? [] : [neither("no-app-moment", { madeInstant: Math.round(fact.at) })];
}

const apart = (one: Stretch, other: Stretch): number => Math.max(0, one.earliest - other.latest, other.earliest - one.latest);

/** The satellites' time where no zone makes it the camera's: the place may have been found long before the picture. */
function satelliteLines(satellite: number | undefined, taken: Taken): readonly PictureLine[] {
  if (satellite === undefined) return [];
  const { earliest, latest, settledBy } = momentOf(taken);
  const differs = settledBy === "nothing" || satellite < earliest - FIVE_MINUTES_MS || satellite > latest + FIVE_MINUTES_MS;
  return differs ? [neither("satellite-differs", { satelliteInstant: satellite, wallClock: taken.text })] : [];
}

/** What the camera's own clock says, beside the app's. */
function cameraLines(state: JobState, time: PictureTime, fact: Live): readonly PictureLine[] {
  const { taken, app, camera } = time;
  if (taken === undefined) {
    const notes = photosRead(state, "all").get(String(fact.what.photo))?.notes;
    if (notes === undefined) return [neither("not-read-yet")];
    const why = notes.find((note) => note.startsWith("time-") || note.startsWith("metadata-")) ?? "time-missing";
    return [neither(why)];
  }
  const clock = { wallClock: taken.text };
  const satellite = satelliteLines(photosRead(state, "all").get(String(fact.what.photo))?.satellite, taken);
  const zone = taken.offset === undefined ? [] : [neither(`zone-by-${taken.offsetFrom ?? "tag"}`, { ...clock, offset: taken.offset })];
  const site = inSiteZone(state, taken);
  const unknown =
    taken.offset === undefined ? [neither(site.length > 1 ? "zone-unknown-twice" : "zone-unknown", { ...clock, ...readAs(site) })] : [];
  if (camera === "later")
    return [contra("camera-later", { ...clock, enteredInstant: Math.round(fact.at) }), ...zone, ...unknown, ...satellite];
  if (camera === "earlier" && app)
    return [contra("camera-earlier", { ...clock, apartDuration: apart(time, app) }), ...zone, ...unknown, ...satellite];
  return camera === "agrees" && app
    ? [pro("camera-agrees", clock), ...zone, ...unknown, ...satellite]
    : [...zone, ...unknown, ...satellite];
}

/** A wall clock of unknown zone as the site's own clock would have read it. */
function readAs([first, second]: readonly Stretch[]): { readonly [name: string]: number } {
  return { ...(first ? { firstInstant: first.earliest } : {}), ...(second ? { secondInstant: second.earliest } : {}) };
}

/** The other entries of its step: whether the picture lies among them. */
function stepLines(state: JobState, { item }: Instance, time: PictureTime, fact: Live): readonly PictureLine[] {
  if (fact.kind === "received-otherwise" || !Number.isFinite(time.earliest)) return [];
  const items = (state.sheet?.items ?? []).filter(({ step }) => step === item.step);
  const others = items
    .flatMap(({ id }) => state.byItem.get(id) ?? [])
    .filter((other) => other.id !== fact.id && entersItem(other) && other.kind !== "received-otherwise")
    .map(happenedAt);
  if (others.length === 0) return [];
  const [first, last] = [Math.min(...others), Math.max(...others)];
  const figures = { count: String(others.length), firstInstant: Math.round(first), lastInstant: Math.round(last) };
  const off = apart(time, { earliest: first, latest: last });
  return [off <= AMONG_MS ? pro("among-its-step", figures) : contra("apart-from-its-step", { ...figures, apartDuration: Math.round(off) })];
}

function coveringLines(state: JobState, instance: Instance, fact: Live): readonly PictureLine[] {
  const beside = besideCovering(state, instance, fact);
  if (beside === undefined) return [];
  const { order, covering } = beside;
  if (order === "received otherwise") return [neither("covering-received")];
  if (order === "covering inferred") return [neither("covering-inferred", { coveredInstant: Math.round(beside.covered.at) })];
  const figures = timesOf(beside);
  if (order === "before") return [pro("before-covering", figures)];
  if (order === "after") return [contra("after-covering", figures)];
  return [neither("covering-undecided", { coveredInstant: middle(covering), coveredDoubtDuration: halfOf(covering) })];
}

/** When a picture was taken, as far as anything tells: each line a fact, none a verdict on anybody. */
export function whenLines(state: JobState, instance: Instance, fact: Live): readonly PictureLine[] {
  const time = pictureTime(state, fact);
  return [
    ...appLines(time, fact),
    ...clockLines(fact),
    ...cameraLines(state, time, fact),
    ...stepLines(state, instance, time, fact),
    ...coveringLines(state, instance, fact),
  ];
}

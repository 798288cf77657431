import { greatCircle, SPHERE_SHARE } from "../../geometry/index.ts";
import type { Json } from "../../ledger/index.ts";
import { judge, toInteger } from "../../tolerance/index.ts";
import type { Live } from "../live.ts";
import { oncePer } from "../once-per.ts";
import { factsOf, type JobState } from "../state.ts";
import { type Fix, fixOf, photosRead } from "./photo-read.ts";
import { contra, neither, type PictureLine, pro } from "./picture-line.ts";

const DEGREES = 1e-7;
const MICROMETRES_PER_MILLIMETRE = 1000;
/** How far from its middle a site reaches where nobody said (own). Micrometres. */
const SITE_REACHES = 75_000_000;
/** The doubt of a place whose accuracy nobody said (own). Micrometres. */
const UNSAID_DOUBT = 100_000_000;
/** A fix older than this may be of another place (own), ms. */
const OLD_FIX_MS = 120_000;

/** The site's middle, how far it reaches, µm. */
interface Site {
  readonly fix: Fix;
  readonly reaches: number;
}

/** Where the site is, as last said; else as the entry that opened the job has it. */
const siteOf = oncePer((state: JobState, _: "all"): Site | undefined => {
  const said = factsOf(state, "site-located")
    .filter(({ entry }) => fixOf(entry.where) !== undefined)
    .at(-1);
  const from: Live | undefined = said ?? factsOf(state, "job-opened")[0];
  const fix = fixOf(from?.entry.where);
  return fix && { fix, reaches: said?.what.reaches ?? SITE_REACHES };
});

/**
 * The expanded doubt of a fix, µm. A browser's accuracy is the radius of 95 % (W3C Geolocation, from memory); Exif's positioning
 * error says nothing of the kind and counts as a standard uncertainty, so twice itself.
 */
function doubtOfFix({ accuracy }: Fix, from: "browser" | "camera"): number {
  if (accuracy === undefined) return UNSAID_DOUBT;
  return accuracy * MICROMETRES_PER_MILLIMETRE * (from === "camera" ? 2 : 1);
}

interface Apart {
  /** µm, integers. */
  readonly distance: number;
  readonly doubt: number;
}

/** How far two fixes lie apart, and its doubt: those of both, and of the sphere that stands for the earth. */
function apart(one: Fix, other: Fix, doubts: readonly number[]): Apart | undefined {
  const point = ({ latitude, longitude }: Fix) => ({ latitude: latitude * DEGREES, longitude: longitude * DEGREES });
  const way = greatCircle(point(one), point(other));
  if (!way.ok) return undefined;
  const distance = toInteger(way.value * 1e6);
  const squares = [...doubts, distance * SPHERE_SHARE].map((doubt) => doubt * doubt);
  return { distance, doubt: Math.ceil(Math.sqrt(squares.reduce((sum, square) => sum + square, 0))) };
}

/** How far a phone is from the site's middle. `reaches`: how far from there the site goes. Micrometres, integers. */
export interface AwayFromSite extends Apart {
  readonly reaches: number;
}

/** How far a place in a phone's `where` lies from the site; undefined where either has no place. */
export function awayFromSite(state: JobState, where: Json | undefined): AwayFromSite | undefined {
  const site = siteOf(state, "all");
  const fix = fixOf(where);
  if (site === undefined || fix === undefined) return undefined;
  const found = apart(site.fix, fix, [doubtOfFix(site.fix, "browser"), doubtOfFix(fix, "browser")]);
  return found && { ...found, reaches: site.reaches };
}

/** A place against the site: at it, away from it, or too close to call. */
function atSite(site: Site, fix: Fix, from: "browser" | "camera"): readonly PictureLine[] {
  const found = apart(site.fix, fix, [doubtOfFix(site.fix, "browser"), doubtOfFix(fix, from)]);
  if (found === undefined) return [];
  const { distance, doubt } = found;
  const judged = judge({ value: distance, expanded: doubt, rule: "guarded", upper: site.reaches });
  if (!judged.ok) return [];
  const name = from === "browser" ? "app-place" : "camera-place";
  const figures = { awayDistance: distance, doubtDistance: doubt, reachDistance: site.reaches };
  if (judged.value.verdict === "within") return [pro(`${name}-at-site`, figures)];
  return judged.value.verdict === "outside" ? [contra(`${name}-off-site`, figures)] : [neither(`${name}-undecided`, figures)];
}

function ageLines({ age }: Fix): readonly PictureLine[] {
  return age !== undefined && age > OLD_FIX_MS ? [neither("app-place-old", { ageDuration: age })] : [];
}

/** The app's own fix beside the camera's. */
function besideEachOther(app: Fix | undefined, camera: Fix | undefined): readonly PictureLine[] {
  if (app === undefined || camera === undefined) return [];
  const found = apart(app, camera, [doubtOfFix(app, "browser"), doubtOfFix(camera, "camera")]);
  if (found === undefined) return [];
  const figures = { awayDistance: found.distance, doubtDistance: found.doubt };
  return [found.distance <= found.doubt ? pro("places-agree", figures) : contra("places-differ", figures)];
}

/** Why the camera gives no place: missing is common, and a note. */
function noCameraPlace(state: JobState, fact: Live): readonly PictureLine[] {
  const read = photosRead(state, "all").get(String(fact.what.photo));
  if (read === undefined) return [];
  if (read.placeWithheld) return [neither("place-taken-out")];
  const why = read.notes.find((note) => note.startsWith("position-"));
  return [neither(why ?? "position-missing")];
}

/** Where a picture was taken, as far as anything tells. */
export function whereLines(state: JobState, fact: Live): readonly PictureLine[] {
  const site = siteOf(state, "all");
  // what the office files was not taken where the office is
  const app = fact.kind === "picture-taken" ? fixOf(fact.entry.where) : undefined;
  const camera = photosRead(state, "all").get(String(fact.what.photo))?.position;
  const places = [
    ...(app && site ? atSite(site, app, "browser") : []),
    ...(app ? ageLines(app) : []),
    ...(camera && site ? atSite(site, camera, "camera") : []),
  ];
  return [
    ...places,
    ...(site === undefined && (app ?? camera) ? [neither("site-not-located")] : []),
    ...besideEachOther(app, camera),
    ...(app === undefined && fact.kind === "picture-taken" ? [neither("no-app-place")] : []),
    ...(camera === undefined ? noCameraPlace(state, fact) : []),
  ];
}

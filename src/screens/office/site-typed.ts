import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import { readQuantity } from "../../reading/index.ts";
import type { NewSite, SiteView } from "../../wire/index.ts";

export const siteFields = ["latitude", "longitude", "accuracy", "reaches"] as const;
export type SiteField = (typeof siteFields)[number];

/** The site's place as the edge takes it: 1e-7 degree, millimetres, micrometres. */
export interface SiteTyped {
  readonly latitude: number;
  readonly longitude: number;
  readonly accuracy?: number;
  readonly reaches?: number;
}

const MICROMETRES_PER_MILLIMETRE = 1000;

/** Degrees typed as a decimal number, in 1e-7 degree, read to the millionth (0.11 m on the ground). */
function degreesTyped(typed: string, place: SiteField, most: number): Outcome<number> {
  const read = readQuantity(typed, { kind: "angle", unit: "°", signed: true, place });
  if (!read.ok) return read;
  if (Math.abs(read.value.value) > most * 1e6) return refuse("reading-out-of-range", place, { found: typed.trim(), largest: most });
  return ok(read.value.value * 10);
}

/** A length in micrometres, more than none; undefined where nothing was typed. */
function lengthTyped(typed: string, place: SiteField, unit: "ft" | "m"): Outcome<number | undefined> {
  if (typed.trim() === "") return ok(undefined);
  const read = readQuantity(typed, { kind: "length", unit, place });
  if (!read.ok) return read;
  return read.value.value > 0 ? ok(read.value.value) : refuse("reading-out-of-range", place, { found: typed.trim(), largest: 0 });
}

/** What was typed of a site's place. Refuses with the field as place, as readings are refused. Accuracy is rounded up. */
export function siteTyped(typed: Readonly<Record<SiteField, string>>, unit: "ft" | "m"): Outcome<SiteTyped> {
  const latitude = degreesTyped(typed.latitude, "latitude", 90);
  if (!latitude.ok) return latitude;
  const longitude = degreesTyped(typed.longitude, "longitude", 180);
  if (!longitude.ok) return longitude;
  const accuracy = lengthTyped(typed.accuracy, "accuracy", unit);
  if (!accuracy.ok) return accuracy;
  const reaches = lengthTyped(typed.reaches, "reaches", unit);
  if (!reaches.ok) return reaches;
  return ok({
    latitude: latitude.value,
    longitude: longitude.value,
    ...(accuracy.value === undefined ? {} : { accuracy: Math.ceil(accuracy.value / MICROMETRES_PER_MILLIMETRE) }),
    ...(reaches.value === undefined ? {} : { reaches: reaches.value }),
  });
}

const perUnit = { ft: 304_800, m: 1_000_000 } as const;

/** A place as it would be typed: degrees, and lengths in feet or metres; empty where it is not known. */
export function placeShown(place: NewSite["place"], unit: "ft" | "m"): Readonly<Record<SiteField, string>> {
  const degrees = (value: number | undefined): string => (value === undefined ? "" : (value / 1e7).toFixed(6));
  const length = (micrometres: number | undefined): string =>
    micrometres === undefined ? "" : String(Number((micrometres / perUnit[unit]).toFixed(2)));
  return {
    latitude: degrees(place?.latitude),
    longitude: degrees(place?.longitude),
    accuracy: length(place?.accuracy === undefined ? undefined : place.accuracy * MICROMETRES_PER_MILLIMETRE),
    reaches: length(place?.reaches),
  };
}

/** A site as it was changed. A place whose fields were left as they were shown stays as it is: showing it has rounded it. */
export function siteChanged(site: SiteView, text: (name: string) => string, unit: "ft" | "m"): Outcome<NewSite> {
  const typed = Object.fromEntries(siteFields.map((field) => [field, text(field)])) as Record<SiteField, string>;
  const shown = placeShown(site.place, unit);
  const tieMarks = text("tieMarks")
    .split("\n")
    .map((mark) => mark.trim())
    .filter((mark) => mark !== "");
  const words = {
    id: site.id,
    address: text("address"),
    ...(text("heightMark") !== "" && { heightMark: text("heightMark") }),
    ...(tieMarks.length > 0 && { tieMarks }),
  };
  if (siteFields.every((field) => typed[field] === "")) return ok(words);
  if (text("how") === "") return refuse("reading-empty", "how", {});
  if (site.place !== undefined && siteFields.every((field) => typed[field] === shown[field]))
    return ok({ ...words, place: { ...site.place, how: text("how") } });
  const place = siteTyped(typed, unit);
  return place.ok ? ok({ ...words, place: { ...place.value, how: text("how") } }) : place;
}

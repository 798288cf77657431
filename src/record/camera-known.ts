import { type PhotoFacts, whyNoPosition } from "../photo/index.ts";
import type { PhotoKnown } from "./context.ts";

/** What the record says of a photo's own time and place: the wall clock as it is, and of the place only whether there is one. */
export function cameraKnown(facts: PhotoFacts): Pick<PhotoKnown, "taken" | "timeless" | "place"> {
  return { ...(facts.taken ? { taken: facts.taken.text } : { timeless: true }), place: placeOf(facts) };
}

/** A place that was withheld or broken is not one that the camera never had. */
function placeOf(facts: PhotoFacts): NonNullable<PhotoKnown["place"]> {
  const why = whyNoPosition(facts);
  if (why === undefined) return "position-in-photo";
  if (why === "position-withheld") return why;
  return why === "position-missing" || why === "metadata-missing" ? "no-position" : "position-unusable";
}

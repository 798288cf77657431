import type { Clearance, CoveredState, Finding, Verdict } from "../../job/index.ts";
import type { Tone } from "../../record/index.ts";
import { type CountedAs, isForElectrician } from "./counts.ts";

/** The record's shapes, and one of its own for what is clear on somebody's word. */
export type Shape = Tone | "word";

const ofVerdict: Readonly<Record<Verdict, Tone>> = {
  within: "within",
  outside: "outside",
  "too close to call": "undecided",
  "not taken": "missing",
  "could not be taken": "missing",
  "does not apply": "apart",
};

const ofClearance: Readonly<Record<Clearance["state"], Shape>> = { clear: "within", "on word": "word", "not yet": "outside" };

/** As in the record: no verdict is drawn of what a licensed person decides, nor of a picture that nobody has looked at. */
export const shapeOfFinding = (finding: Pick<Finding, "verdict" | "asks" | "value" | "says">): Shape =>
  isForElectrician(finding) || finding.says.key === "picture.not-looked-at" ? "apart" : ofVerdict[finding.verdict];

const ofCount: Readonly<Record<CountedAs, Shape>> = { ...ofVerdict, "as asked": "within", taken: "apart", "beside its figure": "apart" };
export const shapeOfCount = (as: CountedAs): Shape => ofCount[as];

/** Of a covering that happened: what was shown then, and that nothing was shown where nobody said so. */
export function shapeOfCovered({
  shown,
  laterDoubted,
  beforeRecord,
}: Pick<CoveredState, "shown" | "laterDoubted" | "beforeRecord">): Shape {
  if (beforeRecord) return "apart";
  if (shown === "not yet") return "outside";
  if (laterDoubted || shown === undefined) return "undecided";
  return shown === "on word" ? "word" : "within";
}

export const shapeOfVerdict = (verdict: Verdict): Shape => ofVerdict[verdict];
export const shapeOfClearance = (state: Clearance["state"]): Shape => ofClearance[state];

import type { Clearance, Verdict } from "../../job/index.ts";
import type { Tone } from "../../record/index.ts";

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

export const shapeOfVerdict = (verdict: Verdict): Shape => ofVerdict[verdict];
export const shapeOfClearance = (state: Clearance["state"]): Shape => ofClearance[state];

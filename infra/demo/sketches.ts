import type { Sketch } from "./sketch.ts";
import { basinSection, fittingDetail } from "./sketches-basin.ts";
import { pipeJoints, trenchSection } from "./sketches-pipe.ts";
import { groundMarks, sitePlan, wallDetail } from "./sketches-site.ts";
import { lidAndPlate, linerPatch, lipAndLevel, rockWork } from "./sketches-water.ts";

export const sketches = {
  "site plan": sitePlan,
  "ground marks": groundMarks,
  "wall detail": wallDetail,
  "basin section": basinSection,
  "fitting detail": fittingDetail,
  "pipe joints": pipeJoints,
  "trench section": trenchSection,
  "lip and level": lipAndLevel,
  "liner patch": linerPatch,
  "rock work": rockWork,
  "lid and plate": lidAndPlate,
} as const satisfies Readonly<Record<string, Sketch>>;
export type SketchName = keyof typeof sketches;

import type { Question } from "../question.ts";
import { cameBack } from "./came-back.ts";
import { carryNothing } from "./carry-nothing.ts";
import { changedLimit } from "./changed-limit.ts";
import { cost } from "./cost.ts";
import { firstTimeRight } from "./first-time-right.ts";
import { foremen } from "./foremen.ts";
import { instruments } from "./instruments.ts";
import { lookAtFirst } from "./look-at-first.ts";
import { overTime } from "./over-time.ts";
import { sampling } from "./sampling.ts";
import { secondLook } from "./second-look.ts";
import { tapeStudy } from "./tape-study.ts";
import { taught } from "./taught.ts";
import { worthOfHolds } from "./worth-of-holds.ts";

/** Every question that is answered, in the order in which they are asked. */
export const questions: readonly Question[] = [
  firstTimeRight,
  tapeStudy,
  instruments,
  carryNothing,
  secondLook,
  cost,
  worthOfHolds,
  cameBack,
  lookAtFirst,
  foremen,
  taught,
  overTime,
  changedLimit,
  sampling,
];

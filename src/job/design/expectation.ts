import type { Refusal } from "../../outcome/index.ts";
import type { QuantityKind } from "../../units/index.ts";
import type { FigureKey } from "./vocabulary.ts";

/** Every figure that is derived from a design, in the order of the water's way. */
export const expectationKinds = {
  basinGross: "volume",
  waterPerInch: "volume",
  waterPerCentimetre: "volume",
  waterBelowIntake: "volume",
  waterLostToTilt: "volume",
  basinUsable: "volume",
  floatsOn: "length",
  leaveForWaterSeen: "length",
  leaveForRain: "length",
  leaveForWashingIn: "length",
  leaveForWinter: "length",
  rainThatFloats: "length",
  stoneOnLid: "mass",
  boulderWeight: "mass",
  lidLoadLeft: "mass",
  pipeBore: "length",
  equivalentRun: "length",
  flow: "flow",
  pumpHead: "length",
  frictionHead: "length",
  frictionHeadDarcy: "length",
  velocity: "velocity",
  pipeContents: "volume",
  drainBack: "volume",
  flowWanted: "flow",
  flowPerInch: "flowPerLength",
  headOnLip: "length",
  lipFlowRatio: "ratio",
  lipOutOfLevelSeen: "length",
  waterInStream: "volume",
  waterInPools: "volume",
  waterInTransit: "volume",
  drawDown: "length",
  reserveRatio: "ratio",
  reserveLeft: "volume",
  timeToFill: "duration",
  timeUntilAir: "duration",
  daysWithoutMakeUp: "duration",
  witnessMark: "length",
  socketLeastSchedule40: "length",
  socketLeastSchedule80: "length",
  cordNeeded: "length",
  cordLeft: "length",
  voltageDrop: "voltage",
  voltageDropShare: "ratio",
  wireRunAtNotedShare: "length",
  roomForRain: "volume",
  rainToOverflow: "length",
  daysToOverflow: "duration",
  dugBottomOverGrade: "length",
  topOfBedOverGrade: "length",
  rimOverGrade: "length",
  wallFittingOverGrade: "length",
  spillwayLipOverGrade: "length",
  linerEdgeOverGrade: "length",
} as const satisfies Readonly<Record<string, QuantityKind>>;
export type ExpectationId = keyof typeof expectationKinds;
export const expectationIds = Object.keys(expectationKinds) as readonly ExpectationId[];

/** What a design leads to in one figure. Integers in the fixed unit of `kind`, rounded once. */
export interface Expectation {
  readonly id: ExpectationId;
  readonly kind: QuantityKind;
  /** Absent where figures are missing, or where there is none to give (`answer` says why). */
  readonly value?: number;
  /** U = 2 u. */
  readonly doubt?: number;
  /** The three largest contributors to the doubt, each with its standard uncertainty in the fixed unit. */
  readonly contributors?: readonly { readonly name: string; readonly u: number }[];
  /** What is no number: `curve below static head`, `leave water`, `ask the maker`, `draws air at once` ... */
  readonly answer?: string;
  /** To be printed beside it: `heads out of range`, `above 5 ft/s`. */
  readonly warning?: string;
  /** Key of the caution that goes wherever the figure goes. */
  readonly caution?: string;
  /** Figures that it waits for. */
  readonly needs?: readonly FigureKey[];
  /** Figures for which an own default stands in, to be said beside it. */
  readonly assumes?: readonly FigureKey[];
  /** Why the figures that are there cannot be worked with; `place` names which. */
  readonly refusal?: Refusal;
}

/** A company, people, parts and a tolerance sheet that nobody has: invented for the questions' own demonstration. */
export const SHEET = "questions-demo";

export interface MadeStep {
  readonly id: string;
  readonly covering: string;
  readonly instrument: "laser" | "tape-measure";
}

export const coverings = ["cover-one", "cover-two", "cover-three"] as const;
export const coveringTitles = ["backfill the basin", "fill the trench", "stone over the basin"] as const;
export const stepTitles = [
  "Basin set",
  "Side-wall fitting",
  "Bed and backfill",
  "Pipe in its trench",
  "Glue and cure",
  "Spillway",
  "Liner edge",
  "Stone and lid",
] as const;

export const steps: readonly [MadeStep, ...MadeStep[]] = [
  { id: "step-one", covering: "cover-one", instrument: "laser" },
  { id: "step-two", covering: "cover-one", instrument: "tape-measure" },
  { id: "step-three", covering: "cover-one", instrument: "tape-measure" },
  { id: "step-four", covering: "cover-two", instrument: "laser" },
  { id: "step-five", covering: "cover-two", instrument: "tape-measure" },
  { id: "step-six", covering: "cover-two", instrument: "tape-measure" },
  { id: "step-seven", covering: "cover-three", instrument: "laser" },
  { id: "step-eight", covering: "cover-three", instrument: "tape-measure" },
];

/** Of each step: one held check with its reading, one held answer, further readings without a check, pictures. */
export const checkOf = (step: string): string => `${step}-height`;
export const readingOf = (step: string): string => `${step}-read`;
export const answerOf = (step: string): string => `${step}-seen`;
export const FURTHER = [5, 5, 5, 5, 5, 5, 4, 4] as const;
export const PICTURES = [3, 3, 2, 3, 2, 3, 2, 2] as const;
/** Four places of a rim in the first step. */
export const RIM = { check: "rim-flat", places: ["rim-one", "rim-two", "rim-three", "rim-four"] } as const;

export const lasers = ["laser-1", "laser-2", "laser-3", "laser-4"] as const;
export const TAPE = "tape-measure";
export const PLACING = "hard-edge";

/** Two makes of each kind of part. */
export const parts = [
  ["Pump of the first make", "Pump of the second make"],
  ["Fitting of the first make", "Fitting of the second make"],
  ["Valve of the first make", "Valve of the second make"],
  ["Liner of the first make", "Liner of the second make"],
] as const;

export const foremen = ["foreman-1", "foreman-2", "foreman-3", "foreman-4", "foreman-5"] as const;
export const hands = ["hand-1", "hand-2", "hand-3", "hand-4", "hand-5", "hand-6"] as const;

/** Micrometres: one mark of the tape, limit to either side of the design, and the standard uncertainty of one reading. */
export const MARK = 1_587.5;
export const LIMIT = 25_400;
export const NOISE = 965;
export const READING_U = Math.round(Math.hypot(NOISE, MARK / Math.sqrt(12)));
/** How far good work lies from the design, standard deviation. */
export const WORK = 2_000;

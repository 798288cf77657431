import { type Outcome, ok, type Refusal, refuse } from "../outcome/index.ts";
import { type DoubtFigures, ownFigures, type Receiver } from "./figures.ts";
import { ofReading, ofSetUp, type SourceRole } from "./sources.ts";
import { tapePermittedError } from "./tapes.ts";
import { rectangular, resolutionUncertainty, type Uncertain } from "./uncertain.ts";

/** The level line that a reading was taken from. `distance` in metres from instrument to place; for a spirit level, the length it spans. */
export type LevelLine =
  | { readonly kind: "laser"; readonly receiver: Receiver; readonly distance?: number }
  | { readonly kind: "string with line level"; readonly distance?: number }
  | {
      readonly kind: "spirit level";
      readonly distance?: number;
      /**
       * How the level lay. The vial's error changes sign when the level is turned end for end, so that it cancels in the mean
       * of a `first` and a `turned` gap of one set-up. `both ways`: the value is that mean already, no vial error is left.
       */
      readonly lay?: "first" | "turned" | "both ways";
    };

export interface ReadingCircumstances {
  /** Id of the reading: whatever is new at each reading is named by it. */
  readonly reading: string;
  /** Id of the set-up. Without one the line and the permitted error are as new as the reading. */
  readonly setUp?: string;
  /** Metres. */
  readonly value: number;
  /** Smallest step of the tape or rod as read, metres; 0 for none. */
  readonly resolution: number;
  /** Half-width that the place brings, metres (`placingHalfWidths`). */
  readonly placingHalfWidth: number;
  /** Permitted error of tape or rod as a half-width, metres; 0 for none. Absent: OIML R 35 class II at the value's length. */
  readonly instrument?: { readonly permittedErrorHalfWidth?: number };
  readonly line?: LevelLine;
}

const slopeOf = (kind: LevelLine["kind"], figures: DoubtFigures): number =>
  kind === "laser" ? figures.laserSlope : kind === "spirit level" ? figures.spiritLevelSlope : figures.stringSlope;

function vialSign(line: LevelLine): number {
  if (line.kind !== "spirit level" || line.lay === "both ways") return 0;
  return line.lay === "turned" ? -1 : 1;
}

/** Half-widths, signed, that the line brings. */
function lineHalfWidths(line: LevelLine, figures: DoubtFigures): (readonly [SourceRole, number])[] {
  const atPlace = slopeOf(line.kind, figures) * (line.distance ?? figures.distance);
  if (line.kind === "spirit level") return [["vial", vialSign(line) * atPlace]];
  const receiver = line.kind === "laser" ? figures.receiver[line.receiver] : 0;
  return [
    ["receiver", receiver],
    ["slope", atPlace],
    ["line", figures.lineHeight],
  ];
}

const shared: ReadonlySet<SourceRole> = new Set<SourceRole>(["line", "permitted-error", "vial"]);

function unfitSize(name: string, size: number): Refusal | undefined {
  if (!Number.isFinite(size)) return refuse("number-not-finite", `reading/${name}`).refusal;
  return size < 0 ? refuse("number-not-positive", `reading/${name}`).refusal : undefined;
}

/**
 * One reading with its doubt, metres. New with every reading: resolution, placing, receiver, slope of the line × distance.
 * Once per set-up, hence without effect on differences within it: height of the line, permitted error, the vial's error.
 * Refuses numbers that are not finite, and negative steps, half-widths and distances.
 */
export function readingUncertainty(circumstances: ReadingCircumstances, figures: DoubtFigures = ownFigures): Outcome<Uncertain> {
  const { reading, setUp, value, resolution, placingHalfWidth, instrument, line } = circumstances;
  if (!Number.isFinite(value)) return refuse("number-not-finite", "reading/value");
  const permittedError = instrument?.permittedErrorHalfWidth ?? tapePermittedError(value);
  const distance = line?.distance ?? 0;
  const fault =
    unfitSize("resolution", resolution) ??
    unfitSize("placingHalfWidth", placingHalfWidth) ??
    unfitSize("permittedErrorHalfWidth", permittedError) ??
    unfitSize("distance", distance);
  if (fault) return { ok: false, refusal: fault };
  const parts = new Map<string, number>();
  // no role comes twice, so nothing adds up
  const bring = (role: SourceRole, u: number): void => {
    if (u !== 0) parts.set(setUp !== undefined && shared.has(role) ? ofSetUp(setUp, role) : ofReading(reading, role), u);
  };
  bring("resolution", resolutionUncertainty(resolution));
  bring("placing", rectangular(placingHalfWidth));
  bring("permitted-error", rectangular(permittedError));
  if (line) for (const [role, halfWidth] of lineHalfWidths(line, figures)) bring(role, rectangular(halfWidth));
  // a value of -0 is 0, as in every sum
  return ok({ value: 0 + value, parts });
}

import { decimalText, nearest, storedInteger } from "./rounding.ts";
import { type LengthUnit, type TapeMarks, tradeUnits } from "./trade-units.ts";

export interface LengthTextOptions {
  /** A plus before a value above zero, for heights above and below a mark. */
  readonly plus?: boolean;
}

/** The finest that a tape without inches shows: a millimetre; in decimal feet a hundredth. */
const decimalPlaces = { ft: 2, mm: 0, cm: 1, m: 3 } as const;

function markedInches(count: bigint, marks: bigint): string {
  const whole = count / marks;
  let top = count % marks;
  let bottom = marks;
  while (top > 0n && top % 2n === 0n) {
    top /= 2n;
    bottom /= 2n;
  }
  if (top === 0n) return `${whole} in`;
  return whole === 0n ? `${top}/${bottom} in` : `${whole} ${top}/${bottom} in`;
}

function inchText(micrometres: bigint, withFeet: boolean, marks: TapeMarks): string {
  const perInch = BigInt(marks);
  const count = nearest(micrometres * perInch, tradeUnits.in.numerator);
  const magnitude = count < 0n ? -count : count;
  const perFoot = 12n * perInch;
  const feet = withFeet ? magnitude / perFoot : 0n;
  const inches = markedInches(magnitude - feet * perFoot, perInch);
  return `${count < 0n ? "-" : ""}${feet === 0n ? "" : `${feet} ft `}${inches}`;
}

/**
 * A length in integer micrometres as text: `3 1/2 in`, `5 ft 3 1/2 in`, `-1/4 in`, `0 in`, `5.29 ft`, `89 mm`, `8.9 cm`, `1.23 m`.
 * Rounded once, half away from zero, to the tape's marks (inches and feet-inches), 0.01 ft or 1 mm. Throws on what is no integer.
 */
export function formatLength(micrometres: number, as: LengthUnit, marks: TapeMarks = 16, options: LengthTextOptions = {}): string {
  const exact = storedInteger(micrometres);
  const text =
    as === "in" || as === "ft-in"
      ? inchText(exact, as === "ft-in", marks)
      : `${decimalText(exact, tradeUnits[as].numerator, decimalPlaces[as])} ${as}`;
  return options.plus === true && !text.startsWith("-") && !text.startsWith("0 ") ? `+${text}` : text;
}

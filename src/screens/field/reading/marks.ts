/** The marks that a tape is read by: parts of an inch, tenths of an inch, or millimetres. */
export type Marks = "1/16" | "1/8" | "1/10" | "mm";

export interface Scale {
  /** Marks in one of what is numbered on the tape: an inch, a centimetre. */
  readonly perNumber: number;
  /** Numbered ones in one of what is printed large: a foot, ten centimetres. */
  readonly perLarge: number;
  /** Numbered ones on the whole tape that is drawn. */
  readonly longest: number;
  /** Unit of the text that is entered. */
  readonly unit: "in" | "mm";
}

export const scales: Readonly<Record<Marks, Scale>> = {
  "1/16": { perNumber: 16, perLarge: 12, longest: 144, unit: "in" },
  "1/8": { perNumber: 8, perLarge: 12, longest: 144, unit: "in" },
  "1/10": { perNumber: 10, perLarge: 12, longest: 144, unit: "in" },
  mm: { perNumber: 10, perLarge: 10, longest: 400, unit: "mm" },
};

/** How far below its number's line a mark is drawn, 0 to 1: halves longer than quarters, quarters than eighths. */
export function markLength(marks: Marks, n: number): number {
  const { perNumber } = scales[marks];
  const part = ((n % perNumber) + perNumber) % perNumber;
  if (part === 0) return 1;
  if (perNumber === 10) return part === 5 ? 0.72 : 0.45;
  const lengths: readonly (readonly [number, number])[] = [
    [perNumber / 2, 0.8],
    [perNumber / 4, 0.62],
    [perNumber / 8, 0.46],
  ];
  return lengths.find(([step]) => step >= 1 && part % step === 0)?.[1] ?? 0.32;
}

/** What stands on the tape at a mark, as somebody writes it down: it says how finely it was read (`41 0/16 in`). */
export function markText(marks: Marks, n: number): string {
  if (marks === "mm") return `${n} mm`;
  const { perNumber } = scales[marks];
  const [whole, part] = [Math.floor(n / perNumber), n % perNumber];
  if (marks === "1/10") return `${whole}.${part} in`;
  // lowest terms would forget the marks that it was read by: 41 1/2 read to the sixteenth is 41 8/16
  return `${whole} ${part}/${perNumber} in`;
}

/** The same in large type: lowest terms, as it is called out. */
export function calledOut(marks: Marks, n: number): string {
  if (marks === "mm" || marks === "1/10") return markText(marks, n);
  const { perNumber } = scales[marks];
  let [part, of] = [n % perNumber, perNumber];
  while (part > 0 && part % 2 === 0) {
    part /= 2;
    of /= 2;
  }
  const whole = Math.floor(n / perNumber);
  return part === 0 ? `${whole} in` : whole === 0 ? `${part}/${of} in` : `${whole} ${part}/${of} in`;
}

/** The mark nearest to a length in micrometres. */
export const markAt = (marks: Marks, micrometres: number): number =>
  Math.max(0, Math.round(marks === "mm" ? micrometres / 1000 : (micrometres / 25_400) * scales[marks].perNumber));

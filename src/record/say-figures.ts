import { type Finding, isBeforeRecord, type Message, type Verdict } from "../job/index.ts";
import { formatQuantity, type QuantityKind, type TapeMarks, type UnitPreferences } from "../units/index.ts";
import { doubtText, marksOf } from "./figures-text.ts";
import type { Titles } from "./say-titles.ts";
import { fill, type Speaking, sentences } from "./speaking.ts";
import { momentText } from "./when.ts";

/** A check that says which way something lies: its value prints as so much higher or lower, never with a sign. */
const saysWhichWay: ReadonlySet<string> = new Set(["moved since", "fourth place"]);

/** Figures, limits and verdicts as text, in one language and one company's units. */
export function makeFigures({ language, sheet, zone, units: lengths }: Speaking, { checkOf }: Titles) {
  const texts = sentences[language];
  const units: UnitPreferences = { lengths };

  const quantity = (kind: QuantityKind, value: number, marks?: TapeMarks): string =>
    kind === "instant" ? momentText(value, zone, language) : formatQuantity(kind, value, marks === undefined ? units : { ...units, marks });

  const verdict = (v: Verdict): string => texts[`verdict.${v}`];

  function limit(finding: Finding): string {
    const { kind, lower, upper } = finding;
    if (kind === undefined || (lower === undefined && upper === undefined)) return texts["limit.none"];
    const marks = marksOf(sheet, checkOf(finding.check));
    const of = (value: number): string => quantity(kind, value, marks);
    if (lower !== undefined && upper !== undefined) {
      return lower === -upper
        ? fill(texts["limit.plus-minus"], { upper: of(upper) })
        : fill(texts["limit.between"], { lower: of(lower), upper: of(upper) });
    }
    return upper !== undefined ? fill(texts["limit.most"], { upper: of(upper) }) : fill(texts["limit.least"], { lower: of(lower ?? 0) });
  }

  /** A finding's value: in the marks of its tape, and higher or lower instead of a sign where it tells which way. */
  function value(finding: Finding, of: number | undefined = finding.value): string {
    const { kind } = finding;
    if (kind === undefined || of === undefined) return "";
    const check = checkOf(finding.check);
    // how near something is found again is a doubt itself, and rounded up as such
    if (check?.function === "found by ties") return doubtText(kind, of, units);
    const marks = marksOf(sheet, check);
    const size = quantity(kind, Math.abs(of), marks);
    if (!saysWhichWay.has(check?.function ?? "") || size === quantity(kind, 0, marks)) return quantity(kind, of, marks);
    return fill(texts[of < 0 ? "value.lower" : "value.higher"], { length: size });
  }

  /** Where a figure comes from, in words. */
  function origin(source: string | undefined): string {
    if (source === undefined || source === "common practice") return source === undefined ? "" : texts["origin.common"];
    return source.replace(/^own\b/, texts["origin.own"]).replace(/^common practice\b/, texts["origin.common-part"]);
  }

  /** Who is asked instead of a verdict; absent for all that is judged. */
  const askedOf = (finding: Finding): string | undefined =>
    finding.kind === undefined || finding.value === undefined ? undefined : (finding.asks ?? checkOf(finding.check)?.asks);

  /** A verdict's word as it prints: where there was no limit to compare with, that it was taken or is as asked. */
  function verdictWord(finding: Finding): string {
    if (askedOf(finding) !== undefined) return texts["word.beside"];
    if (isBeforeRecord(finding)) return texts["word.before-record"];
    if (finding.verdict !== "within") return verdict(finding.verdict);
    if (finding.of === "picture" || finding.of === "reading") return texts["word.taken"];
    const { function: name } = checkOf(finding.check) ?? {};
    return finding.of === "answer" || name === "at least one of" || (name === "found by ties" && finding.value === undefined)
      ? texts["word.as-asked"]
      : verdict("within");
  }

  /** Figures of a message as text: by the name of the figure, else in the kind of the finding. */
  function figuresOf(message: Message, kind: QuantityKind | undefined, marks: TapeMarks): Record<string, string> {
    return Object.fromEntries(
      Object.entries(message.figures).map(([name, value]) => {
        if (typeof value === "string") return [name, value];
        if (name.endsWith("Instant")) return [name, quantity("instant", value)];
        if (name.endsWith("Mass")) return [name, quantity("mass", value)];
        if (name.endsWith("Length")) return [name, quantity("length", value, marks)];
        if (name.endsWith("Duration")) return [name, quantity("duration", value)];
        if (name.endsWith("Volume")) return [name, quantity("volume", value)];
        if (name.endsWith("Flow")) return [name, quantity("flow", value)];
        if (name === "named" || name === "least" || name === "ties") return [name, String(value)];
        return [name, quantity(kind ?? "length", value, marks)];
      }),
    );
  }

  return {
    quantity,
    limit,
    value,
    origin,
    verdict,
    verdictWord,
    askedOf,
    figuresOf,
    doubt: (kind: QuantityKind, of: number): string => doubtText(kind, of, units),
    marks: (f: Finding): TapeMarks => marksOf(sheet, checkOf(f.check)),
  };
}

export type FiguresSaid = ReturnType<typeof makeFigures>;

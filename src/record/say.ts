import type { About, Check, Clearance, Finding, Item, Line, Message, ToleranceSheet, Verdict, WayOut, Words } from "../job/index.ts";
import type { Refusal } from "../outcome/index.ts";
import { formatQuantity, type QuantityKind, type TapeMarks, tapeMarks, type UnitPreferences } from "../units/index.ts";
import { type Language, momentText } from "./when.ts";
import { type FindingSentence, findingsEn } from "./words/findings-en.ts";
import { findingsEs } from "./words/findings-es.ts";
import { refusalsEn } from "./words/refusals-en.ts";
import { refusalsEs, wantedEs } from "./words/refusals-es.ts";

/** What sentences are made with. */
export interface Speaking {
  readonly language: Language;
  readonly units: "inch" | "metric";
  /** IANA zone of the site. */
  readonly zone: string;
  readonly sheet?: ToleranceSheet;
  /** Who stands behind an entry, in the words of the edition, and the reason that it gives. */
  readonly behind?: (entry: string) => { readonly name: string; readonly reason: string };
}

const sentences: Readonly<Record<Language, Readonly<Record<FindingSentence, string>>>> = { en: findingsEn, es: findingsEs };
const refusals = { en: refusalsEn, es: refusalsEs } as const;

/** A sentence with its figures in place; a figure that is not there prints nothing, and leaves no gap. */
export function fill(sentence: string, figures: Readonly<Record<string, string>>): string {
  const present = sentence.replace(/\s*\{(\w+)\}/g, (place, name: string) => ((figures[name] ?? "") === "" ? "" : place));
  return present.replace(/\{(\w+)\}/g, (_, name: string) => figures[name] ?? "").trim();
}

/** A doubt of a quarter inch or more is told in sixteenths, a smaller one in sixty-fourths: nobody reads it finer. */
const QUARTER_INCH = 6350;

/** A doubt is rounded up, never down: to those marks, or a tenth of a millimetre. */
function doubtText(kind: QuantityKind, value: number, units: UnitPreferences): string {
  if (kind !== "length") return formatQuantity(kind, value, units);
  if (units.lengths === "metric") return `${Math.ceil(value / 100) / 10} mm`;
  const marks = value >= QUARTER_INCH ? 16 : 64;
  return formatQuantity("length", Math.round((Math.ceil((value * marks) / 25_400) * 25_400) / marks), { ...units, marks });
}

/** The tape's own marks: those of the instrument that the check's first item names. */
function marksOf(sheet: ToleranceSheet | undefined, check: Check | undefined): TapeMarks {
  const item = sheet?.items.find((i) => i.id === check?.items[0]);
  const resolution = sheet?.instruments.find((i) => i.id === item?.instrument)?.resolution ?? 1588;
  return tapeMarks.find((marks) => Math.round(25_400 / marks) <= resolution + 1) ?? 16;
}

/** Makes every sentence of findings, lines, clearances and refusals in one language and one company's units. */
export function makeSayer(speaking: Speaking) {
  const { language, sheet, zone } = speaking;
  const texts = sentences[language];
  const units: UnitPreferences = { lengths: speaking.units };
  const words = (w: Words | undefined): string => (w === undefined ? "" : (w[language] ?? w.en));

  const itemOf = (id: string | undefined): Item | undefined => sheet?.items.find((i) => i.id === id);
  const checkOf = (id: string | undefined): Check | undefined => sheet?.checks.find((c) => c.id === id);

  function tagged(title: string, tag: string | undefined, set: string | undefined): string {
    if (tag === undefined) return title;
    const named = words(sheet?.tagSets.find((t) => t.id === set)?.title);
    return fill(texts["title.tagged"], { title, set: named.toLowerCase(), tag });
  }

  /** The title of an item or check, with its tag. */
  function title(about: About): string {
    const check = checkOf(about.check);
    const item = itemOf(about.item);
    const set = item?.tags ?? sheet?.items.find((i) => check?.items.includes(i.id) && i.tags !== undefined)?.tags;
    const own = sheet?.tagSets.find((t) => t.id === about.item);
    return tagged(words(check?.title ?? item?.title ?? own?.title) || (about.check ?? about.item ?? ""), about.tag, set);
  }

  const titleOf = (finding: Finding): string =>
    title({
      ...(finding.of === "check" ? { check: finding.check } : { item: finding.check }),
      ...(finding.tag === undefined ? {} : { tag: finding.tag }),
    });

  const quantity = (kind: QuantityKind, value: number, marks?: TapeMarks): string =>
    kind === "instant" ? momentText(value, zone, language) : formatQuantity(kind, value, marks === undefined ? units : { ...units, marks });

  const figureTitle = (id: string): string => words(sheet?.figures.find((f) => f.id === id)?.title) || id;

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

  /** Figures of a message as text: by the name of the figure, else in the kind of the finding. */
  function figuresOf(message: Message, kind: QuantityKind | undefined, marks: TapeMarks): Record<string, string> {
    return Object.fromEntries(
      Object.entries(message.figures).map(([name, value]) => {
        if (typeof value === "string") return [name, value];
        if (name.endsWith("Instant")) return [name, quantity("instant", value)];
        if (name.endsWith("Duration")) return [name, quantity("duration", value)];
        if (name === "named" || name === "least") return [name, String(value)];
        if (name === "needed") return [name, doubtText(kind ?? "length", value, units)];
        return [name, quantity(kind ?? "length", value, marks)];
      }),
    );
  }

  function missingText(finding: Finding): string {
    return (finding.missing ?? []).map((about) => title(about)).join("; ");
  }

  const verdict = (v: Verdict): string => texts[`verdict.${v}`];

  /** What was decided about a finding, and what else belongs to its sentence. */
  function also(finding: Finding): string[] {
    const check = checkOf(finding.check);
    const { by, kind } = finding;
    const behind = by && speaking.behind?.(by.entry);
    const named = { name: behind?.name ?? texts["role.someone"], reason: behind?.reason ?? "" };
    const way =
      by?.way === "go-ahead"
        ? by.confirmed
          ? texts["also.go-ahead-confirmed"]
          : texts["also.go-ahead"]
        : by?.way === "concession"
          ? texts["also.concession"]
          : by?.way === "departure"
            ? texts["also.departure"]
            : undefined;
    const earlier = (finding.beforeRework ?? [])
      .map((b) =>
        fill(texts["also.before"], {
          value: kind === undefined ? "" : quantity(kind, b.value, marksOf(sheet, check)),
          verdict: verdict(b.verdict),
        }),
      )
      .join("; ");
    return [
      ...(finding.soFar && finding.of === "check" ? [texts["also.so-far"]] : []),
      ...(finding.costs ? [fill(texts["also.costs"], { costs: quantity(finding.costs.kind, finding.costs.value) })] : []),
      ...(way === undefined ? [] : [fill(way, named)]),
      ...(by?.way === "rework" ? [texts["also.rework"]] : []),
      ...(earlier === "" ? [] : [fill(texts["also.before-rework"], { earlier })]),
      ...(check?.asks === "electrician" ? [texts["also.electrician"]] : []),
    ];
  }

  function choiceText(finding: Finding): string {
    const id = finding.says.figures.choice;
    return words(itemOf(finding.check)?.choices?.find((c) => c.id === id)?.title);
  }

  function sentenceOf(finding: Finding): string {
    const check = checkOf(finding.check);
    const marks = marksOf(sheet, check);
    const { kind, value, doubt } = finding;
    const key = check?.rule === "simple acceptance" ? finding.says.key.replace("value.", "value.simple-") : finding.says.key;
    const template = texts[key as FindingSentence] ?? texts[finding.says.key as FindingSentence] ?? finding.says.key;
    return fill(template, {
      title: titleOf(finding),
      limit: limit(finding),
      missing: missingText(finding),
      unknown: (finding.unknown ?? []).map(figureTitle).join("; "),
      choice: choiceText(finding),
      ...figuresOf(finding.says, kind, marks),
      ...(finding.says.figures.choice === undefined ? {} : { choice: choiceText(finding) }),
      ...(kind === undefined || value === undefined ? {} : { value: quantity(kind, value, marks) }),
      ...(kind === undefined || doubt === undefined ? {} : { doubt: doubtText(kind, doubt, units) }),
    });
  }

  /** The sentence of a finding, as the record prints it. */
  const finding = (f: Finding): string => [sentenceOf(f), ...also(f)].join(" ");

  /** A line of a clearance: what is asked for and why, in words. */
  function line(l: Line): string {
    const own = title(l.about);
    if (l.from !== undefined) return fill(texts["time.from"], { title: own, fromInstant: quantity("instant", l.from) });
    return `${own}: ${verdict(l.verdict)}`;
  }

  function clearanceText(c: Clearance): string {
    const covering = sheet?.coverings.find((k) => k.id === c.covering);
    const name = (c.onWord ?? []).map((entry) => speaking.behind?.(entry).name ?? texts["role.someone"]).join(", ");
    return fill(texts[`clearance.${c.state}`], { act: words(covering?.title), name });
  }

  /** Figures of a refusal as text. Only those of a sheet's limits are quantities, in micrometres. */
  function refusalFigure(code: Refusal["code"], name: string, value: string | number): string {
    if (typeof value === "number")
      return code === "sheet-limit-undecidable" || code === "sheet-limit-on-nominal" ? doubtText("length", value, units) : String(value);
    if (name === "wanted" && language === "es") return wantedEs[value] ?? value;
    // so that what was typed has visible borders
    if (name === "found" && value !== "") return language === "es" ? `«${value}»` : `“${value}”`;
    return value;
  }

  /** A refusal's sentence: what is wrong and how to fix it. */
  function refusal(r: Refusal): string {
    const figures = Object.entries(r.figures).map(([name, value]) => [name, refusalFigure(r.code, name, value)]);
    return fill(refusals[language][r.code], {
      place: r.place,
      ...(r.column === undefined ? {} : { column: String(r.column) }),
      ...Object.fromEntries(figures),
    });
  }

  return {
    words,
    title,
    titleOf,
    finding,
    line,
    clearance: clearanceText,
    wayOut: (way: WayOut): string => texts[`way.${way}`],
    verdict,
    limit,
    refusal,
    quantity,
    moment: (milliseconds: number): string => momentText(milliseconds, zone, language),
    doubt: (kind: QuantityKind, value: number): string => doubtText(kind, value, units),
    marks: (f: Finding): TapeMarks => marksOf(sheet, checkOf(f.check)),
    role: (role: "crew" | "office" | "company owner" | "program" | "customer" | "someone"): string => texts[`role.${role}`],
  };
}

export type Sayer = ReturnType<typeof makeSayer>;

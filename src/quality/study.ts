import { type LimitStanding, limitStanding, sheetFaults, type ToleranceSheet } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import { type CrossedVariance, crossedVariance } from "../statistics/index.ts";
import type { TapeStudy } from "./observation.ts";

/** What a tape study found: standard deviations in micrometres, and what it puts in place of the placing's default. */
export interface StudyFound {
  readonly study: TapeStudy;
  readonly people: readonly string[];
  readonly marks: readonly string[];
  readonly variance: CrossedVariance;
  /** One person, one mark, again; between people; both together. */
  readonly repeatability: number;
  readonly betweenPeople: number;
  readonly reproducibility: number;
  /** Half-width of a rectangle of the same size, micrometres, rounded up: as a placing has it. */
  readonly halfWidth: number;
  /** Each person's mean less that of all, micrometres. */
  readonly offsets: readonly { readonly person: string; readonly offset: number }[];
  /** Chance of such differences between people where there are none. */
  readonly p: number;
}

const distinct = (list: readonly string[]): readonly string[] => [...new Set(list)];

/** The analysis of a study; undefined where somebody left a mark out, or it has fewer than two people, marks or trials. */
export function studyFound(study: TapeStudy): StudyFound | undefined {
  const [people, marks] = [distinct(study.readings.map(({ person }) => person)), distinct(study.readings.map(({ mark }) => mark))];
  const values = marks.map((mark) =>
    people.map((person) =>
      study.readings
        .filter((reading) => reading.mark === mark && reading.person === person)
        .sort((a, b) => a.trial - b.trial)
        .map(({ value }) => value),
    ),
  );
  const variance = crossedVariance(values);
  if (variance === undefined) return undefined;
  const all = values.flat(2);
  const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
  const offsets = people.map((person, j) => {
    const own = values.flatMap((row) => row[j] ?? []);
    return { person, offset: Math.round(own.reduce((sum, x) => sum + x, 0) / own.length - mean) };
  });
  const reproducibility = Math.sqrt(variance.reproducibility);
  return {
    study,
    people,
    marks,
    variance,
    repeatability: Math.sqrt(variance.repeatability),
    betweenPeople: Math.sqrt(variance.betweenPeople),
    reproducibility,
    halfWidth: Math.ceil(reproducibility * Math.sqrt(3) - 1e-6),
    offsets,
    // against the interaction, always: to pool it only where it looks small would find people different more often than is stated
    p: variance.person.p ?? 1,
  };
}

/** A tolerance sheet with the studies' half-widths in place of its own. The newest study of a placing counts. */
export function sheetWithStudies(sheet: ToleranceSheet, found: readonly StudyFound[]): ToleranceSheet {
  const widths = new Map(
    [...found].sort((a, b) => (a.study.day < b.study.day ? -1 : 1)).map(({ study, halfWidth }) => [study.placing, halfWidth]),
  );
  return { ...sheet, placings: sheet.placings.map((placing) => ({ ...placing, halfWidth: widths.get(placing.id) ?? placing.halfWidth })) };
}

/** Checks whose limits can no longer be decided with the studies' half-widths, though they could with the sheet's own. */
export function undecided(sheet: ToleranceSheet, found: readonly StudyFound[]): readonly string[] {
  const places = (of: ToleranceSheet): ReadonlySet<string> => new Set(sheetFaults(of as unknown as Json).map(({ place }) => place));
  const [before, after] = [places(sheet), places(sheetWithStudies(sheet, found))];
  return sheet.checks.map(({ id }) => id).filter((id) => after.has(`sheet/checks/${id}`) && !before.has(`sheet/checks/${id}`));
}

/** Whether one limit can be decided, by the sheet's own half-widths and by the studies'. */
export interface LimitStudied {
  readonly check: string;
  readonly before: LimitStanding;
  readonly after: LimitStanding;
}

/** The limits of a sheet for which the studies change how much room they need, in the order of the sheet. */
export function limitsStudied(sheet: ToleranceSheet, found: readonly StudyFound[]): readonly LimitStudied[] {
  const studied = sheetWithStudies(sheet, found);
  return sheet.checks
    .map(({ id }) => ({ check: id, before: limitStanding(sheet, id), after: limitStanding(studied, id) }))
    .filter(({ before, after }) => JSON.stringify(before) !== JSON.stringify(after));
}

import { createHash } from "node:crypto";
import type { Json } from "#core/ledger/index.ts";
import type { JobObserved } from "#core/quality/index.ts";
import { typedOf } from "./draw-reading.ts";
import { answerOf, checkOf, coverings, parts, readingOf, steps } from "./made-up.ts";
import { figureOf } from "./sheet.ts";

/** One entry before it is sealed. `at`: the phone's clock, milliseconds. */
export interface Scripted {
  readonly kind: string;
  readonly at: number;
  readonly person: string;
  readonly what: { readonly [key: string]: Json };
  /** The drawn reading that it is, and the one that it repeats: `what.reading` is then the id of that one's entry. */
  readonly entry?: string;
  readonly repeats?: string;
}

export interface TakenOver {
  readonly thing: "sheet" | "kit card";
  readonly name: string;
  readonly digest: string;
}

const MINUTE_MS = 60_000;
const OFFICE = "office-1";
const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);

/** Opening, versions and design, as the office enters them before the crew comes. */
function opening(job: JobObserved, versions: readonly TakenOver[]): readonly Scripted[] {
  const at = job.opened - 86_400_000;
  const figures = Object.fromEntries(
    steps.map(({ id }, place) => {
      const aim = job.findings.find(({ check }) => check === checkOf(id))?.aim ?? 0;
      return [figureOf(place), { typed: typedOf(aim), unit: "in" }];
    }),
  );
  const own = new Set(job.parts.map(({ part }) => part));
  const taken = versions.filter(({ thing, name }) => thing === "sheet" || own.has(partOf(name)));
  return [
    { kind: "job-opened", what: { title: job.title, zone: "UTC", language: "en", units: "inch", crew: [...job.crew] } },
    ...taken.map((version, i) => ({ kind: "version-taken-over", what: { ...version, number: i + 1 } })),
    { kind: "design-set", what: { figures } },
  ].map((entry, i) => ({ ...entry, at: at + i * MINUTE_MS, person: OFFICE }));
}

/** A kit card's id for a part, and back. */
export const cardOf = (part: string): string => part.toLowerCase().replaceAll(" ", "-");
const partOf = (name: string): string => parts.flat().find((part) => cardOf(part) === name) ?? name;

function work(job: JobObserved): readonly Scripted[] {
  const reworks = job.reworks.flatMap(({ about, at, person, minutes }) => {
    const step = steps.find(({ id }) => checkOf(id) === about || answerOf(id) === about);
    const isAnswer = step !== undefined && answerOf(step.id) === about;
    return [
      { kind: "reworked", at, person, what: { about: isAnswer ? { item: about } : { check: about }, done: "done again", minutes } },
      ...(isAnswer ? [{ kind: "answered", at: at + 1000, person, what: { item: about, choice: "as-it-should-be" } }] : []),
    ];
  });
  const reworkedAt = new Map(job.reworks.map(({ about, at }) => [about, at]));
  const readings = job.readings
    .filter(({ blindOf }) => blindOf === undefined)
    .map(({ entry, item, step, typed, unit, at, person, instrument = "" }) => {
      const isAfter = entry.endsWith("-after") && item === readingOf(step);
      // what was read after the rework cannot have been read before it
      return {
        kind: "reading-taken",
        at: isAfter ? (reworkedAt.get(checkOf(step)) ?? at) + 1000 : at,
        person,
        what: { item, typed, unit, instrument },
        entry,
      };
    });
  const again = job.readings.flatMap(({ blindOf, item, typed, unit, at, person, instrument = "" }) =>
    blindOf === undefined ? [] : [{ kind: "read-again", at, person, what: { item, typed, unit, instrument }, repeats: blindOf }],
  );
  const answers = job.findings
    .filter(({ of }) => of === "answer")
    .map(({ check, first, at = 0, person = "" }) => ({
      kind: "answered",
      at,
      person,
      what: { item: check, choice: first === "outside" ? "not-as-it-should-be" : "as-it-should-be" },
    }));
  const pictures = job.pictures.map(({ item, photo, at, person }) => ({
    kind: "picture-taken",
    at,
    person,
    what: { item, photo, bytes: 1_000_000, type: "image/jpeg" },
  }));
  return [...readings, ...again, ...answers, ...pictures, ...reworks];
}

function covered(job: JobObserved, sheet: string): readonly Scripted[] {
  return job.coverings.flatMap(({ covering, at = 0, person = "" }) => [
    { kind: "covered", at, person, what: { covering, shown: "clear", lines: [], sheet, rules: 1, restedOn: [] } },
    ...(covering === coverings[2]
      ? [{ kind: "signed", at: at + 18 * 3_600_000, person, what: { relation: "customer", language: "en" } }]
      : []),
  ]);
}

const afterwards = (job: JobObserved): readonly Scripted[] =>
  job.callbacks.flatMap(({ entry: _, symptom, day, ...closed }) => [
    { kind: "callback-opened", at: noon(day), person: OFFICE, what: { symptom, day } },
    {
      kind: "callback-closed",
      at: noon(day) + 3_600_000,
      person: OFFICE,
      what: Object.fromEntries(Object.entries(closed)) as { [key: string]: Json },
    },
  ]);

/** Everything that was entered about one drawn job, in the order of its time. */
export function entriesOf(job: JobObserved, versions: readonly TakenOver[]): readonly Scripted[] {
  const sheet = versions.find(({ thing }) => thing === "sheet")?.digest ?? "";
  return [...opening(job, versions), ...work(job), ...covered(job, sheet), ...afterwards(job)].sort((a, b) => a.at - b.at);
}

/** 32 hex digits that follow from a name. */
export const idFrom = (name: string): string => createHash("sha256").update(name).digest("hex").slice(0, 32);

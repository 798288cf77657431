import type { CompanyObserved, JobObserved, Observed, TapeStudy } from "#core/quality/index.ts";
import { type Chance, chanceFrom } from "../chance/index.ts";
import { dayAt, partsDrawn } from "./draw-parts.ts";
import type { At } from "./draw-reading.ts";
import { type DrawnStep, stepDrawn } from "./draw-step.ts";
import type { Effects } from "./effects.ts";
import { coverings, foremen, hands, lasers, MARK, NOISE, PLACING, SHEET, steps, TAPE } from "./made-up.ts";

const DAY_MS = 86_400_000;
const YEARS = 4;
/** Where nothing else is said, the questions are asked on 1 March 2026. */
const ENDS = Date.UTC(2026, 2, 1, 14);
const beganOf = ({ ends = ENDS }: Drawing): number => ends - Math.round(YEARS * 365.25) * DAY_MS;
export const today = dayAt(ENDS);

export interface Drawing {
  readonly seed: number;
  readonly jobs: number;
  readonly effects: Effects;
  /** The day on which the questions are asked, milliseconds; the first job lies four years before it. */
  readonly ends?: number;
}

function jobDrawn(chance: Chance, place: number, drawing: Drawing): JobObserved {
  const { jobs, effects, ends = ENDS } = drawing;
  const began = beganOf(drawing);
  const opened = began + Math.floor(((place + chance.next()) / jobs) * (ends - began - 60 * DAY_MS));
  const foreman = chance.one(foremen);
  const second = chance.one(hands);
  const job = `job-${String(place + 1).padStart(5, "0")}`;
  const at: At = { chance, effects, job, began, foreman, second, laser: chance.one(lasers), now: opened };
  const all: DrawnStep = { findings: [], readings: [], pictures: [], reworks: [] };
  const done: JobObserved["coverings"][number][] = [];
  for (const covering of coverings) {
    for (const [i, step] of steps.entries()) {
      if (step.covering !== covering) continue;
      const drawn = stepDrawn(at, step, i);
      for (const part of ["findings", "readings", "pictures", "reworks"] as const) (all[part] as unknown[]).push(...drawn[part]);
    }
    at.now += 30 * 60_000;
    done.push({ covering, at: at.now, person: foreman, shown: "clear", openedAgain: false });
    at.now += 18 * 3_600_000;
  }
  const installed = at.now;
  return {
    job,
    title: `Job ${place + 1}`,
    sheet: SHEET,
    opened,
    installed: dayAt(installed),
    until: dayAt(installed),
    foreman,
    crew: [foreman, second],
    coverings: done,
    ...all,
    ...partsDrawn(chance, job, installed, ends, effects),
    phoneTime: (70 + chance.below(50)) * 60_000,
  };
}

/** One picture of a first job in the place of one in each of the others. */
function withRing(chance: Chance, jobs: JobObserved[], size: number): void {
  const places = Array.from({ length: size }, () => chance.below(jobs.length));
  const picture = jobs[places[0] ?? 0]?.pictures[0];
  for (const place of new Set(places)) {
    const job = jobs[place];
    if (job === undefined || picture === undefined) continue;
    const [first, ...rest] = job.pictures;
    if (first)
      jobs[place] = {
        ...job,
        pictures: [{ ...first, photo: picture.photo, ...(picture.likeness ? { likeness: picture.likeness } : {}) }, ...rest],
      };
  }
}

/** Three people, five marks, each twice; nobody holds the tape differently. */
function studyDrawn(chance: Chance, began: number): TapeStudy {
  const people = [foremen[0], foremen[1], hands[0]];
  const readings = [1, 2, 3, 4, 5].flatMap((mark) => {
    const truth = (12 + chance.below(60)) * 25_400 + chance.next() * MARK;
    return people.flatMap((person) =>
      [1, 2].map((trial) => ({ person, mark: String(mark), trial, value: Math.round((truth + NOISE * chance.normal()) / 100) * 100 })),
    );
  });
  return { entry: "study-1", day: dayAt(began + 200 * DAY_MS), instrument: TAPE, placing: PLACING, readings };
}

/** Every laser read two ways each half year over 100 ft; a drifting one is found off at the last. */
function companyDrawn(chance: Chance, drawing: Drawing): CompanyObserved {
  const { effects } = drawing;
  const began = beganOf(drawing);
  const times = Array.from({ length: 2 * YEARS }, (_, i) => began + (i + 0.5) * 182 * DAY_MS);
  const allowed = 1_588;
  const instrumentChecks = times.flatMap((at, i) =>
    lasers.map((instrument) => ({
      entry: `check-${instrument}-${i + 1}`,
      instrument,
      at,
      person: foremen[0],
      way: "laser two ways" as const,
      off:
        i === times.length - 1 && effects.drift?.laser === instrument ? 3 * allowed : Math.round(0.6 * allowed * (2 * chance.next() - 1)),
      distance: 30_480_000,
      allowed,
    })),
  );
  const taught = [{ entry: "taught-1", day: dayAt(began + 700 * DAY_MS), persons: [], step: "step-four" }];
  return { taught, studies: [studyDrawn(chance, began)], instrumentChecks, sheets: [] };
}

/** A company as the questions read it, from a seed: rows, without the ledgers that they would come from. */
export function companyFrom(drawing: Drawing): Observed {
  const chance = chanceFrom(drawing.seed);
  const jobs = Array.from({ length: drawing.jobs }, (_, place) => jobDrawn(chance, place, drawing));
  if (drawing.effects.ring) withRing(chance, jobs, drawing.effects.ring.jobs);
  return { jobs, company: companyDrawn(chance, drawing) };
}

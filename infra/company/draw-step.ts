import type { FindingObserved, PictureObserved, ReadingObserved, ReworkObserved } from "#core/quality/index.ts";
import { type At, driftOf, onMark, reading, wait } from "./draw-reading.ts";
import {
  answerOf,
  checkOf,
  FURTHER,
  LIMIT,
  MARK,
  type MadeStep,
  NOISE,
  PICTURES,
  READING_U,
  RIM,
  readingOf,
  TAPE,
  WORK,
} from "./made-up.ts";

/** Share of steps of jobs in which the first value is not right, whoever does it and whatever it is. */
const GOES_WRONG = 0.08;
/** Height of the rim's own places, micrometres: how far a basin lies out of its plane. */
const RIM_WORK = 2_500;

export interface DrawnStep {
  readonly findings: FindingObserved[];
  readonly readings: ReadingObserved[];
  readonly pictures: PictureObserved[];
  readonly reworks: ReworkObserved[];
}

/** The design's figure, what the work came to, and the held reading of it. */
function heldReading(at: At, step: MadeStep, isWrong: boolean, into: DrawnStep): void {
  const { chance, effects, foreman } = at;
  const nominal = onMark((4 + chance.below(5)) * 25_400);
  const instrument = step.instrument === "laser" ? at.laser : TAPE;
  const side = chance.happens(0.5) ? 1 : -1;
  const away = isWrong ? side * (LIMIT + 4_000 + 4_000 * chance.next()) : WORK * chance.normal();
  const drift = step.instrument === "laser" ? driftOf(at) : 0;
  const asRead = onMark(nominal + away + drift + NOISE * chance.normal());
  const typesNominal = !isWrong && effects.nominal?.foreman === foreman && chance.happens(effects.nominal.share);
  const value = typesNominal ? nominal : asRead;
  const taken = reading(at, step, readingOf(step.id), value, instrument, { nominal });
  into.readings.push(taken);
  if (chance.happens(0.1 / 3)) {
    // one covering in ten is measured again by someone else, who cannot see the first
    const again = onMark(nominal + away + drift + NOISE * chance.normal());
    const entry = `${taken.entry}-again`;
    into.readings.push(
      reading(at, step, readingOf(step.id), again, instrument, {
        entry,
        person: at.second,
        phone: `${at.second}-phone`,
        blindOf: taken.entry,
      }),
    );
  }
  const doubt = 2 * READING_U;
  const reworked = isWrong;
  const last = reworked ? onMark(nominal + WORK * chance.normal()) : value;
  if (reworked) into.readings.push(reading(at, step, readingOf(step.id), last, instrument, { nominal, entry: `${taken.entry}-after` }));
  into.findings.push({
    check: checkOf(step.id),
    of: "check",
    step: step.id,
    weight: "holds",
    holds: step.covering,
    kind: "length",
    first: isWrong ? "outside" : "within",
    firstValue: value,
    verdict: "within",
    value: last,
    doubt,
    aim: nominal,
    lower: nominal - LIMIT,
    upper: nominal + LIMIT,
    deviation: value - nominal,
    at: taken.at,
    person: foreman,
    instrument,
    reworked,
    afterCovering: false,
    ...(reworked ? { passage: "rework" as const, waited: (20 + chance.below(60)) * 60_000 } : {}),
  });
}

function heldAnswer(at: At, step: MadeStep, isWrong: boolean, into: DrawnStep): void {
  into.findings.push({
    check: answerOf(step.id),
    of: "answer",
    step: step.id,
    weight: "holds",
    holds: step.covering,
    first: isWrong ? "outside" : "within",
    verdict: "within",
    at: wait(at, 10, 30),
    person: at.foreman,
    reworked: isWrong,
    afterCovering: false,
    ...(isWrong ? { passage: "rework" as const, waited: (10 + at.chance.below(40)) * 60_000 } : {}),
  });
}

function rim(at: At, step: MadeStep, into: DrawnStep): void {
  const { chance } = at;
  const line = onMark((36 + chance.below(24)) * 25_400 + chance.below(16) * MARK);
  for (const item of RIM.places) {
    const value = onMark(line + RIM_WORK * chance.normal() + NOISE * chance.normal());
    into.readings.push(reading(at, step, item, value, at.laser, { around: RIM.check, setUp: `${at.job}-set-up` }));
  }
}

/** Everything that one step of one job brings. `place`: of the step, from 0. */
export function stepDrawn(at: At, step: MadeStep, place: number): DrawnStep {
  const into: DrawnStep = { findings: [], readings: [], pictures: [], reworks: [] };
  const { chance, effects } = at;
  const isWrong = chance.happens(GOES_WRONG);
  // an idle answer leaves what goes wrong to the reading
  const byReading = effects.idle?.step === step.id || chance.happens(0.5);
  if (place === 0) rim(at, step, into);
  heldReading(at, step, isWrong && byReading, into);
  heldAnswer(at, step, isWrong && !byReading, into);
  for (let k = 0; k < (FURTHER[place] ?? 0); k++) {
    const value = (10 + chance.below(200)) * 25_400 + chance.below(16) * MARK;
    into.readings.push(reading(at, step, `${step.id}-more-${k + 1}`, value, TAPE));
  }
  for (let k = 0; k < (PICTURES[place] ?? 0); k++) {
    const item = `${step.id}-picture-${k + 1}`;
    const [photo, likeness] = [chance.hex(64), chance.hex(16)];
    into.pictures.push({
      entry: `${at.job}-${item}`,
      item,
      step: step.id,
      photo,
      likeness,
      at: wait(at, 15, 40),
      person: at.foreman,
      afterCovering: false,
    });
  }
  if (isWrong) {
    const about = byReading ? checkOf(step.id) : answerOf(step.id);
    into.reworks.push({ about, step: step.id, at: at.now, person: at.foreman, minutes: 10 + chance.below(50) });
    wait(at, 600, 1800);
  }
  return into;
}

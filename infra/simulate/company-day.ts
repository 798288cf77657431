import type { Chance } from "../chance/index.ts";
import { ofDay } from "./job-script.ts";
import type { Platform } from "./platform.ts";
import { type StepName, stepNames } from "./step.ts";

/** What a company's people do on a day, in steps; `at` in milliseconds of the day in UTC, and may pass its end. */
export interface DayAsked {
  readonly platform: Platform;
  /** Photos of each sending of a job, in their order. */
  readonly sendings: readonly { readonly photos: number }[];
  readonly photosPerJob: number;
  readonly recordsPerJob: number;
  /** The month's first day: the owner asks for the report of the last. */
  readonly reports: boolean;
  /** Without the looks of the phones, where only photos or records are wanted. */
  readonly looks?: boolean;
  /** Only what lies in this part of the day, milliseconds; the same steps as in the whole. */
  readonly within?: readonly [from: number, until: number];
}

const HOUR = 3_600_000;
const MINUTE = 60_000;
/** A phone asks for one thing after another; from one job to the next goes by so much. */
const AFTER_MS = 400;
/** Codes of steps, so that millions of them lie in an array of bytes. */
export const codeOf = Object.fromEntries(stepNames.map((name, code) => [name, code])) as Readonly<Record<StepName, number>>;

function zoneOf(chance: Chance, { shares }: Platform["zones"]): number {
  let left = chance.next();
  for (const { hours, share } of shares) {
    left -= share;
    if (left < 0) return hours;
  }
  return shares[0]?.hours ?? 0;
}

/** Whether a job grew after one instant and not after another. */
function grownSince(grows: readonly number[], before: number, now: number): boolean {
  let [low, high] = [0, grows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((grows[middle] ?? 0) > before) high = middle;
    else low = middle + 1;
  }
  return (grows[low] ?? Number.POSITIVE_INFINITY) <= now;
}

/**
 * One company's day. Crews send what they enter, and each photo is read a moment later; while a page is looked at its phone reads the
 * list of jobs again and again, and every job of the company that has grown since, whoever made it grow. The office looks at each job in
 * the evening, opens one on its first day and issues its records on the last.
 */
export function companyDay(chance: Chance, asked: DayAsked, told: (step: number, at: number) => void): void {
  const { platform, sendings, photosPerJob, recordsPerJob, reports, within, looks: withLooks = true } = asked;
  const { crewsPerCompany, daysPerJob, screenMinutes, lookSeconds, beginsHour, worksHours, questionsAsked } = platform.day;
  const tell = (step: StepName, at: number): void => {
    if (within === undefined || (at >= within[0] && at < within[1])) told(codeOf[step], at);
  };
  const begins = (beginsHour - zoneOf(chance, platform.zones)) * HOUR;
  const ends = begins + worksHours * HOUR;
  const scripted = sendings.reduce((sum, { photos }) => sum + photos, 0);
  const many = scripted === 0 ? 0 : photosPerJob / scripted;
  const seen: { readonly from: number; readonly until: number }[][] = [];
  const grows: number[][] = [];
  for (let crew = 0; crew < crewsPerCompany; crew += 1) {
    const ofJob = chance.below(daysPerJob);
    const today = ofDay(sendings, ofJob, daysPerJob);
    const own: number[] = [];
    const looks: { from: number; until: number }[] = [];
    if (ofJob === 0) tell("open a job", begins - chance.next() * HOUR);
    const share = (worksHours * HOUR) / Math.max(1, today.length);
    for (const [i, { photos }] of today.entries()) {
      const at = begins + (i + chance.next()) * share;
      tell("send entries", at);
      own.push(at);
      const whole = Math.floor(photos * many + chance.next());
      for (let photo = 0; photo < whole; photo += 1) {
        const sent = at + (photo + 1) * (5_000 + chance.next() * 10_000);
        const read = sent + platform.times.queueMs + 2_000;
        tell("send a photo", sent);
        tell("photo read", read);
        own.push(read);
      }
      const long = (screenMinutes * MINUTE) / Math.max(1, today.length);
      looks.push({ from: at - long + MINUTE, until: at + MINUTE });
    }
    seen.push(looks);
    grows.push(own.sort((a, b) => a - b));
    tell("office looks", ends + chance.next() * 2 * HOUR);
    const records = ofJob === daysPerJob - 1 ? Math.floor(recordsPerJob + chance.next()) : 0;
    for (let n = 0; n < records; n += 1) tell("issue a record", ends + chance.next() * 2 * HOUR);
  }
  if (questionsAsked > 0) tell("owner asks", ends + chance.next() * 3 * HOUR);
  if (reports) tell("month's report", ends + chance.next() * 3 * HOUR);
  for (const looks of withLooks ? seen : []) {
    let before = Number.NEGATIVE_INFINITY;
    for (const { from, until } of looks) {
      // a phone's clock begins anywhere in the fifteen seconds
      for (let at = from + chance.next() * lookSeconds * 1000; at < until; at += lookSeconds * 1000) {
        tell("look", at);
        const grown = grows.filter((own) => grownSince(own, before, at));
        for (const place of grown.keys()) tell("read a job that grew", at + (place + 1) * AFTER_MS);
        before = at;
      }
    }
  }
}

import type { CallbackObserved, PartObserved } from "#core/quality/index.ts";
import type { Chance } from "../chance/index.ts";
import type { Effects } from "./effects.ts";
import { parts } from "./made-up.ts";

const DAY_MS = 86_400_000;
export const dayAt = (milliseconds: number): string => new Date(milliseconds).toISOString().slice(0, 10);

const winters = new Map<number, boolean>();
/** December to March. Years are walked day by day: each day is looked up once. */
function isWinter(at: number): boolean {
  const day = Math.floor(at / DAY_MS);
  const known = winters.get(day) ?? [11, 0, 1, 2].includes(new Date(at).getUTCMonth());
  winters.set(day, known);
  return known;
}

/** Chance a year that any part fails, whenever it is. */
const FAILS_A_YEAR = 0.03;
const WINTER_DAYS = 121;

/** Day by day, until it fails or the watching ends; undefined: still in place. */
function failsAt(chance: Chance, from: number, until: number, inWinter: number): number | undefined {
  // the base hazard is the same every day: one draw for all of them
  const base = from + (-Math.log(1 - chance.next()) / FAILS_A_YEAR) * 365.25 * DAY_MS;
  let ends = base <= until ? base : undefined;
  if (inWinter <= 0) return ends;
  const perDay = 1 - (1 - inWinter) ** (1 / WINTER_DAYS);
  for (let at = from; at <= (ends ?? until); at += DAY_MS) {
    if (isWinter(at) && chance.happens(perDay)) {
      ends = at;
      break;
    }
  }
  return ends;
}

/** The parts of one job, and the callbacks that they bring: the first failure of each part ends its watching. */
export function partsDrawn(
  chance: Chance,
  job: string,
  installed: number,
  until: number,
  { winter }: Effects,
): { readonly parts: readonly PartObserved[]; readonly callbacks: readonly CallbackObserved[] } {
  const callbacks: CallbackObserved[] = [];
  const drawn = parts.map((makes, i): PartObserved => {
    const part = chance.one(makes);
    const failed = failsAt(chance, installed, until, winter?.part === part ? winter.chance : 0);
    if (failed === undefined) return { part, from: dayAt(installed) };
    const day = dayAt(failed);
    callbacks.push({
      entry: `${job}-callback-${i}`,
      symptom: "no flow",
      day,
      cause: part,
      confirmed: true,
      part,
      borneBy: chance.happens(0.5) ? "maker" : "company",
      minutes: 45 + chance.below(120),
      travelMinutes: 30 + chance.below(60),
      partsCost: 4_000 + chance.below(20_000),
      recovered: chance.happens(0.3) ? 3_000 : 0,
    });
    return { part, from: dayAt(installed), failed: day, why: "callback" };
  });
  return { parts: drawn, callbacks };
}

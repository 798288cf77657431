import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type AnswerView, qualitySpeaking, questions, reportModel, usualAsking } from "#core/quality/index.ts";
import { calendarDay, dayNumber, isoDay, typedDay } from "#core/units/index.ts";
import { type Found, reportKey } from "#functions/shared/index.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Services } from "../services.ts";
import { answerTo } from "./answer.ts";
import { todayIn } from "./asked.ts";
import { begun } from "./begun.ts";

/** The last day of a month, 'YYYY-MM'; nothing where that is none. */
export function lastDayOf(month: string): string | undefined {
  const first = typedDay(`${month}-01`);
  if (first === undefined || month.length !== 7) return undefined;
  const next = first.month === 12 ? { year: first.year + 1, month: 1, day: 1 } : { ...first, month: first.month + 1 };
  return isoDay(calendarDay(dayNumber(next) - 1));
}

/**
 * The owner's report of a month, counted to its last day or to today, printed anew at every call: the same answers have the same place
 * in the store. That of a past month says on which day the ledgers were read. Refuses request-shape, print-unavailable, print-failed,
 * store-unavailable.
 */
export async function reportPrinted(services: Services, session: Session, asked: string | null): Promise<Outcome<Found>> {
  const { company } = session;
  const { settings } = await begun(services, company, { reads: [] });
  const now = services.clock();
  const today = todayIn(now, settings.zone);
  const month = asked ?? today.slice(0, 7);
  const last = lastDayOf(month);
  if (last === undefined || month > today.slice(0, 7)) return refuse("request-shape", "month", { found: month });
  const [until = today] = [last, today].sort();
  const views: AnswerView[] = [];
  let [jobs, speaking] = [0, qualitySpeaking(session, { people: {}, jobs: {}, sheets: {}, instruments: {} })];
  // one after another: what all of them go by of thousands of jobs has no room together in an isolate's memory
  for (const question of questions) {
    const told = await answerTo(services, session, question, usualAsking(until), await begun(services, company, question));
    views.push(told.view);
    ({ jobs, speaking } = told);
  }
  const at = Date.parse(`${until}T12:00:00Z`);
  const model = reportModel({ speaking, settings, month, until, read: today, jobs, answers: views, at });
  const digest = await contentDigest(services.digest, JSON.parse(JSON.stringify(model)) as Json);
  if (!digest.ok) throw new Error(`a view model without a canonical form: ${digest.refusal.place}`);
  const key = reportKey(company, digest.value);
  const printed = await services.machines.print({ kind: "report", model, key });
  if (!printed.ok) return printed;
  const found = await services.store.get(key);
  return found.ok ? ok(found.value) : found;
}

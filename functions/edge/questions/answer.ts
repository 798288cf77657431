import { message } from "#core/job/index.ts";
import {
  type Answer,
  type AnswerView,
  type Asking,
  answerView,
  companyObserved,
  type QualitySpeaking,
  type Question,
  qualitySpeaking,
  upTo,
} from "#core/quality/index.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Services } from "../services.ts";
import { todayIn } from "./asked.ts";
import type { Begun } from "./begun.ts";
import { namesFor } from "./names.ts";
import { rowsOf } from "./rows.ts";

export interface Answered {
  readonly answer: Answer;
  readonly view: AnswerView;
  readonly speaking: QualitySpeaking;
  /** Jobs that were read, and those whose rows are behind still. */
  readonly jobs: number;
  readonly behind: number;
  /** Of an answer up to a day that is past: the sentence that says on which day the ledgers were read. */
  readonly readLater: readonly string[];
}

const readOn = (until: string, now: string, { say, name }: QualitySpeaking): string =>
  say(message("counted.read-on", { until: name({ of: "day", id: until }), read: name({ of: "day", id: now }) }));

/**
 * The answer to a question over everything that the company has. Asked up to a day that is past, what was entered later is left out;
 * when the ledgers were read is said beside it, since a verdict goes by later entries too.
 */
export async function answerTo(services: Services, session: Session, question: Question, asking: Asking, start: Begun): Promise<Answered> {
  const { company, language, units } = session;
  const { facts, settings } = start;
  const { zone } = settings;
  const known = namesFor(start);
  const now = todayIn(services.clock(), zone);
  const past = asking.today < now ? upTo(asking.today, zone) : undefined;
  const whole = companyObserved(facts, zone, Object.values(known.sheets));
  const own = past?.company(whole) ?? whole;
  const { jobs, titles, behind } = await rowsOf(services, company, own, question, start, past?.job);
  const speaking = qualitySpeaking({ language, units }, { ...known, jobs: titles });
  const answer = question.answer({ jobs, company: own }, asking);
  const readLater = past === undefined ? [] : [readOn(asking.today, now, speaking)];
  return { answer, view: answerView(answer, speaking), speaking, jobs: jobs.length, behind, readLater };
}

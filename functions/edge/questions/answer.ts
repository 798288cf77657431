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
import { companyFactKinds } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";
import { todayIn } from "./asked.ts";
import { namesFor } from "./names.ts";
import { rowsOf } from "./rows.ts";

export interface Answered {
  readonly answers: readonly { readonly answer: Answer; readonly view: AnswerView }[];
  readonly speaking: QualitySpeaking;
  /** Jobs that were read, and those whose rows are behind still. */
  readonly jobs: number;
  readonly behind: number;
  /** Of answers up to a day that is past: the sentence that says on which day the ledgers were read. */
  readonly readLater: readonly string[];
}

const readOn = (until: string, now: string, { say, name }: QualitySpeaking): string =>
  say(message("counted.read-on", { until: name({ of: "day", id: until }), read: name({ of: "day", id: now }) }));

/**
 * The answers to some questions over everything that the company has, from rows read once. Asked up to a day that is past, what was
 * entered later is left out; when the ledgers were read is said beside it, since a verdict goes by later entries too.
 */
export async function answersTo(
  services: Services,
  session: Session,
  asked: readonly Question[],
  asking: Asking,
  zone: string,
): Promise<Answered> {
  const { company, language, units } = session;
  const { facts, ...things } = await services.known(companyPlace(company), companyFactKinds);
  const known = namesFor(things);
  const now = todayIn(services.clock(), zone);
  const past = asking.today < now ? upTo(asking.today, zone) : undefined;
  const whole = companyObserved(facts, zone, Object.values(known.sheets));
  const own = past?.company(whole) ?? whole;
  const rows = await rowsOf(services, company, own, asked, past?.job);
  const speaking = qualitySpeaking({ language, units }, { ...known, jobs: rows.titles });
  const answers = asked.map((question) => {
    const answer = question.answer({ jobs: rows.of(question), company: own }, asking);
    return { answer, view: answerView(answer, speaking) };
  });
  const readLater = past === undefined ? [] : [readOn(asking.today, now, speaking)];
  return { answers, speaking, jobs: rows.count, behind: rows.behind, readLater };
}

import {
  type Answer,
  type AnswerView,
  type Asking,
  answerView,
  companyObserved,
  type ObservedPart,
  type QualitySpeaking,
  type Question,
  qualitySpeaking,
} from "#core/quality/index.ts";
import { companyFactKinds } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";
import { namesFor } from "./names.ts";
import { rowsOf } from "./rows.ts";

export interface Answered {
  readonly answers: readonly { readonly answer: Answer; readonly view: AnswerView }[];
  readonly speaking: QualitySpeaking;
  /** Jobs that were read, and those whose rows are behind still. */
  readonly jobs: number;
  readonly behind: number;
}

/** The answers to some questions over everything that the company has, from rows read once. */
export async function answersTo(
  services: Services,
  session: Session,
  asked: readonly Question[],
  asking: Asking,
  zone: string,
): Promise<Answered> {
  const { company, language, units } = session;
  const parts = [...new Set(asked.flatMap(({ reads }): readonly ObservedPart[] => reads))];
  const [{ jobs, behind }, facts] = await Promise.all([
    rowsOf(services, company, parts),
    services.companyFacts.ofKinds(companyPlace(company), companyFactKinds),
  ]);
  const names = await namesFor(services, company, jobs);
  const speaking = qualitySpeaking({ language, units }, names);
  const observed = { jobs, company: companyObserved(facts, zone, Object.values(names.sheets)) };
  const answers = asked.map((question) => {
    const answer = question.answer(observed, asking);
    return { answer, view: answerView(answer, speaking) };
  });
  return { answers, speaking, jobs: jobs.length, behind };
}

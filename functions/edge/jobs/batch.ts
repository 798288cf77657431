import type { SealedEntry } from "#core/ledger/index.ts";
import type { Refusal } from "#core/outcome/index.ts";
import type { Batch, EntryAnswer } from "#core/wire/index.ts";
import { problem, statusOf } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import { type Answer, arrived, type Incoming, idOf } from "../ledger/index.ts";
import { sayIn } from "../say.ts";
import type { Services } from "../services.ts";

interface Refused {
  readonly index: number;
  readonly id: string;
  readonly refusal: Refusal;
}

export interface Judged {
  readonly good: readonly Incoming[];
  readonly refused: readonly Refused[];
  /** Ids of the people who are named as authors of the entries. */
  readonly authors: readonly string[];
  /** One answer for each entry of the batch, in its order; `appended` answers the good ones. */
  answers(appended: readonly Answer[], session: Session): readonly EntryAnswer[];
}

/** Judges each entry of a batch on its own; a bad one takes no other with it. */
export async function judgeBatch(services: Services, session: Session, place: Place, { sent, entries }: Batch): Promise<Judged> {
  const people = session.people ?? (await services.companies.people(session.company));
  const expected = { digest: services.digest, job: place.job, sender: { person: session.person, role: session.role, people }, sent };
  const outcomes = await Promise.all(entries.map((raw, index) => arrived(raw, `entries/${index}`, expected)));
  const refused = outcomes.flatMap((outcome, index) => (outcome.ok ? [] : [{ index, id: idOf(entries[index]), refusal: outcome.refusal }]));
  return {
    good: outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])),
    refused,
    authors: [
      ...new Set(
        outcomes.flatMap((outcome, index) => (outcome.ok ? [(entries[index] as Pick<SealedEntry, "sealed">).sealed.author.person] : [])),
      ),
    ],
    answers: (appended, { language, units }) => {
      const say = sayIn(language, units);
      const told = (id: string, refusal: Refusal): EntryAnswer => ({ id, refusal: problem(refusal, statusOf[refusal.code], say(refusal)) });
      const good = [...appended];
      return outcomes.map((outcome, index): EntryAnswer => {
        if (!outcome.ok) return told(idOf(entries[index]), outcome.refusal);
        const answer = good.shift();
        if (answer === undefined) throw new Error("an entry without an answer");
        return "refusal" in answer ? told(answer.id, answer.refusal) : answer;
      });
    },
  };
}

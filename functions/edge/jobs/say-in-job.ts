import type { FactKind } from "#core/job/index.ts";
import type { Json, PartName } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { EntryMade } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Statement } from "../adapters/statement.ts";
import { newId } from "../chance.ts";
import { fromEdge } from "../ledger/index.ts";
import { tellKnown } from "../photos/owed-work.ts";
import type { Services } from "../services.ts";
import { appendToJob } from "./append.ts";
import { photosNamed } from "./consequences.ts";
import { follow } from "./findings.ts";

export interface Said {
  /** Of the one who asks, so that asked twice it is one entry. */
  readonly id?: string | undefined;
  readonly kind: FactKind;
  readonly contents: { readonly [P in PartName]?: Json };
  readonly at: number;
  readonly also?: () => readonly Statement[];
}

/** One fact that somebody at a desk enters through a route of its own, sealed by the edge in his name; the core admits it. */
export async function sayInJob(services: Services, author: Session, place: Place, said: Said): Promise<Outcome<EntryMade>> {
  const { id = newId(), kind, contents, at, also } = said;
  const { person, role } = author;
  const entry = fromEdge(services.digest, { job: place.job, id, kind, person, writer: role, at, contents, once: true });
  const appended = await appendToJob(services, place, [entry], at, { whole: true, ...(also ? { also } : {}) });
  if (!appended.ok) return appended;
  const [answer] = appended.value.answers;
  if (answer === undefined || "refusal" in answer) throw new Error("an entry of a whole batch without its number");
  await follow(services, place);
  await tellKnown(services, place.company, place.job, appended.value.rows.flatMap(photosNamed));
  return ok({ entry: id, number: answer.number });
}

import { type Hold, holdOn } from "#core/keeping/index.ts";
import { type CalendarDay, isoDay, typedDay } from "#core/units/index.ts";
import type { PersonRequest } from "#core/wire/index.ts";
import type { RequestEntry } from "../adapters/person-requests.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";

interface AskedWhat {
  readonly asks: "data" | "removal";
  readonly day: string;
  readonly person?: string;
}
interface AskedWho {
  readonly names?: readonly string[];
  readonly contacts?: readonly string[];
}
interface HeldWhat {
  readonly request: string;
  readonly because: Hold["because"];
  readonly until: string;
}
interface AnsweredWhat {
  readonly request: string;
  readonly bodies: number;
  readonly files: number;
  readonly stays: number;
}

/** A day as the wire's shape has let it in. */
export function dayOf(text: string): CalendarDay {
  const day = typedDay(text);
  if (day === undefined) throw new Error(`not a day: ${text}`);
  return day;
}

/** The hold that was said last, while it runs. */
function heldNow(entries: readonly RequestEntry[], today: CalendarDay): PersonRequest["held"] {
  const last = entries.at(-1);
  if (last === undefined) return undefined;
  const { because, until } = last.what as unknown as HeldWhat;
  const hold = holdOn([{ because, until: dayOf(until) }], today);
  return hold && { because, until: isoDay(hold.until), by: last.person, at: last.at };
}

function requestOf(asked: RequestEntry, all: readonly RequestEntry[], today: CalendarDay): PersonRequest {
  const { asks, day, person } = asked.what as unknown as AskedWhat;
  const { names = [], contacts = [] } = (asked.who ?? {}) as AskedWho;
  const about = all.filter(({ what }) => (what as { request?: unknown } | null)?.request === asked.id);
  const answer = about.findLast(({ kind }) => kind === "person-answered");
  const held = heldNow(
    about.filter(({ kind }) => kind === "person-held"),
    today,
  );
  const { bodies, files, stays } = (answer?.what ?? {}) as unknown as AnsweredWhat;
  return {
    request: asked.id,
    asks,
    names: [...names],
    contacts: [...contacts],
    ...(person === undefined ? {} : { person }),
    day,
    entered: asked.at,
    state: answer ? "answered" : held ? "held" : "open",
    ...(held === undefined ? {} : { held }),
    ...(answer === undefined ? {} : { answered: { at: answer.at, by: answer.person, bodies, files, stays } }),
  };
}

/** Every request of a company, the newest first, from its ledger. */
export async function requestsOf(services: Services, company: string, today: CalendarDay): Promise<readonly PersonRequest[]> {
  const all = await services.personRequests.all(companyPlace(company));
  const asked = all.filter(({ kind, what }) => kind === "person-asked" && what !== null);
  return asked.map((one) => requestOf(one, all, today)).reverse();
}

import { type CardRead, cardJobs, readCard } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { CardCodeSeen } from "#core/photo/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";

/** Another job is named by its id alone: this ledger may go to a customer who has nothing to do with it. */
type Said =
  | { readonly of: "this job"; readonly step?: string }
  | { readonly of: "another job"; readonly job: string; readonly step?: string }
  | { readonly of: "nothing"; readonly why: CardRead["is"] };

const stepsOf = async (services: Services, place: Place): Promise<readonly string[]> =>
  ((await currentJob(services, place)).state.sheet?.steps ?? []).map(({ id }) => id);

async function readIn(services: Services, text: string, company: string, jobs: readonly string[]): Promise<CardRead> {
  const known = await Promise.all(jobs.map(async (job) => ({ job, steps: await stepsOf(services, { company, job }) })));
  return readCard(services.digest, text, company, known);
}

/** Against the job that the photo was put to; where that is not it, against all others of the company. */
async function saidBy(services: Services, { company, job }: Place, text: string): Promise<Said> {
  const own = await readIn(services, text, company, [job]);
  if (own.is === "card") return { of: "this job", ...(own.step === undefined ? {} : { step: own.step }) };
  if (own.is !== "job unknown") return { of: "nothing", why: own.is };
  const others = await cardJobs(services.digest, text, company, await services.jobs.jobs(company));
  const read = await readIn(services, text, company, others);
  if (read.is !== "card") return { of: "nothing", why: read.is };
  return { of: "another job", job: read.job, ...(read.step === undefined ? {} : { step: read.step }) };
}

/** What media saw of cards in a photo, with what each says of the job that names the photo. */
export async function cardsSaid(services: Services, place: Place, cards: readonly CardCodeSeen[]): Promise<Json> {
  const said = new Map<string, Said>();
  for (const { text } of cards) if (!said.has(text)) said.set(text, await saidBy(services, place, text));
  return cards.map((card) => ({ ...card, says: said.get(card.text) })) as unknown as Json;
}

import { admit, type Entry, jobState } from "#core/job/index.ts";
import { genesis } from "#core/ledger/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { type Admission, type Admitting, contentOf, type Incoming } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { headOf, jobLedger, jobSince, takenOver } from "./read.ts";
import type { ReadJob } from "./read-job.ts";

/**
 * Asks the core about each entry, given the job and the entries of the same batch that were taken before it. The state is
 * made anew only when an entry is refused on the older one: what it refers to may have come in this very batch.
 */
export const admissionTo = (services: Services, place: Place, coming: readonly Incoming[]) => (): Admitting => {
  const held = services.held.get(place);
  // head and rows come in one answer: what is judged is what is chained to
  const after = held ? headOf(held.stored) : genesis;
  return { after, admission: async (since) => admissionOf(services, place, coming, await jobSince(services, place, held, since)) };
};

export async function admissionOf(services: Services, place: Place, coming: readonly Incoming[], job: ReadJob): Promise<Admission> {
  const before = job.ledger.entries;
  const drafts = await Promise.all(coming.map((one) => one.sealed({ number: 0, hash: "0".repeat(64) })));
  const asked = drafts.flatMap((draft) =>
    draft.ok ? [{ kind: draft.value.sealed.kind, ...whatOf(contentOf(draft.value.body, "what")) }] : [],
  );
  const known = job.ledger.versions;
  const wanted = takenOver(asked).filter((digest) => !Object.hasOwn(known, digest));
  const versions = [...job.versions, ...(await services.ledgers.versions(place.company, wanted))];
  const taken: Entry[] = [];
  const stateNow = () => jobState(jobLedger([...before, ...taken], versions));
  let state = wanted.length === 0 ? job.state : stateNow();
  let seen = 0;
  return ({ sealed, body, digest }, { writer, sent }) => {
    const { id, kind, author, run, made } = sealed;
    const parts = Object.fromEntries(
      (["what", "who", "where"] as const).flatMap((part) => {
        const content = contentOf(body, part);
        return content === undefined ? [] : [[part, content]];
      }),
    );
    const entry: Entry = { id, digest, kind, author, run, made, sent, ...parts };
    let admitted = admit(state, entry, writer);
    if (!admitted.ok && seen < taken.length) {
      state = stateNow();
      seen = taken.length;
      admitted = admit(state, entry, writer);
    }
    if (admitted.ok) taken.push(entry);
    return admitted;
  };
}

const whatOf = <T>(what: T | undefined): { what?: T } => (what === undefined ? {} : { what });

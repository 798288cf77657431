import type { Json } from "#core/ledger/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { sha256Hex } from "../chance.ts";
import { follow } from "../jobs/findings.ts";
import { append, fromEdge, PROGRAM } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { cardsSaid } from "./cards-said.ts";

/**
 * Writes into a job what was read of a photo that it names, once, however often it is asked. The camera's position goes
 * into the part of the entry that the customer's edition leaves out.
 */
export async function tell(services: Services, place: Place, sha256: string): Promise<boolean> {
  const photo = await services.photos.get(place.company, sha256);
  if (!photo?.facts) return false;
  const { position, cards, ...read } = photo.facts;
  const facts = cards === undefined ? read : { ...read, cards: await cardsSaid(services, place, cards) };
  const at = services.clock();
  const what = { photo: sha256, facts: { ...facts, position: null } } as unknown as Json;
  const entry = fromEdge(services.digest, {
    job: place.job,
    // The same for every try, so that two never stand beside each other.
    id: (await sha256Hex(`picture-read ${place.job} ${sha256}`)).slice(0, 32),
    kind: "picture-read",
    person: PROGRAM,
    writer: "program",
    at,
    contents: position === null ? { what } : { what, where: { position } as unknown as Json },
    once: true,
  });
  const owed = { kind: "tell", company: place.company, ref: `${place.job}/${sha256}` } as const;
  const appended = await append(services, place, [entry], at);
  if (!appended.ok) {
    await services.owed.failed(owed, appended.refusal.code);
    return false;
  }
  await services.owed.paid(owed);
  if (appended.value.rows.length > 0) await follow(services, place);
  return true;
}

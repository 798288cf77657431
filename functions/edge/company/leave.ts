import type { Outcome } from "#core/outcome/index.ts";
import type { PersonRow } from "../adapters/companies.ts";
import { sha256Hex } from "../chance.ts";
import type { Services } from "../services.ts";
import { type Author, change } from "./change.ts";

/**
 * A person has left the company: the entry, the end of sessions, passkeys, and links and codes that wait, all or none. What was made before
 * stays the person's own. Said twice it is one entry.
 */
export async function leave(services: Services, author: Author, person: PersonRow, now: number): Promise<Outcome<number>> {
  const { company } = author;
  const id = (await sha256Hex(`person-left ${company} ${person.id}`)).slice(0, 32);
  return change(services, author, { id, kind: "person-left", what: { person: person.id } }, () => [
    services.companies.personLeft(company, person.id, now),
    ...services.sessions.withdrawal(company, person.id, now),
    services.passkeys.withdrawalOf(company, person.id, now),
  ]);
}

import type { Role } from "#core/job/index.ts";
import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { CompanyMade, NewCompany, Settings } from "#core/wire/index.ts";
import type { PersonRow } from "../adapters/companies.ts";
import { newId } from "../chance.ts";
import type { Services } from "../services.ts";
import { type Author, type Change, change, changes, entryKinds } from "./change.ts";

/**
 * A company with its first settings, its owner and the owner's link, written in one batch: a company that nobody can sign
 * in to is never left behind. `undefined`: the id is taken.
 */
export async function found(services: Services, asked: NewCompany): Promise<Outcome<CompanyMade> | undefined> {
  const { id: company = newId(), name, zone, units, language } = asked;
  if (await services.companies.get(company)) return undefined;
  const now = services.clock();
  const owner = { id: newId(), name: asked.owner.name, role: "company owner" as Role };
  const content: Settings = { name, zone, units, language };
  const digest = await contentDigest(services.digest, content as unknown as Json);
  if (!digest.ok) return digest;
  const settings = { kind: "settings", name: "settings", digest: digest.value, content: content as unknown as Json } as const;
  const { kind, ...set } = settings;
  const link = await services.links.draw(company, owner.id, now);
  const { addCompany, addVersion, addPerson: add } = services.companies;
  const founded = await changes(
    services,
    { company, person: owner.id, role: owner.role },
    [{ kind: entryKinds[kind], what: set }, personAdded(owner)],
    (number) => [
      addCompany({ id: company, name, zone, units, language }, now),
      addVersion(company, { ...settings, number }),
      add(company, { ...owner, came: now }),
      link.made,
    ],
    true,
  );
  if (!founded.ok) return founded.refusal.code === "job-exists" ? undefined : founded;
  return ok({ company, ownerLink: pathOf(link.token) });
}

type NewPerson = Pick<PersonRow, "id" | "name" | "role">;

/** The name is a name: it stands in the part that can be withheld. */
const personAdded = ({ id, name, role }: NewPerson): Change => ({ kind: "person-added", what: { person: id, role }, who: { name } });

export async function addPerson(services: Services, author: Author, person: NewPerson): Promise<Outcome<number>> {
  const came = services.clock();
  return change(services, author, personAdded(person), () => [services.companies.addPerson(author.company, { ...person, came })]);
}

export const pathOf = (token: string): string => `/in/${token}`;

export const linkFor = async (services: Services, company: string, person: string): Promise<string> =>
  pathOf(await services.links.make(company, person, services.clock()));

import type { Role } from "#core/job/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { CompanyMade, NewCompany, Settings } from "#core/wire/index.ts";
import { newId } from "../chance.ts";
import type { Services } from "../services.ts";
import { change, setVersion } from "./change.ts";

/** A company with its first settings, its owner, and the owner's link. `undefined`: the id is taken. */
export async function found(services: Services, asked: NewCompany): Promise<Outcome<CompanyMade> | undefined> {
  const company = asked.id ?? newId();
  const { name, zone, units, language } = asked;
  if (await services.companies.get(company)) return undefined;
  const owner = newId();
  const author = { company, person: owner, role: "company owner" as Role };
  const row = { id: company, name, zone, units, language };
  const settings: Settings = { name, zone, units, language };
  const founded = await setVersion(services, author, { kind: "settings", name: "settings", content: settings }, [
    services.companies.addCompany(row, services.clock()),
  ]);
  if (!founded.ok) return founded;
  const added = await addPerson(services, author, { id: owner, name: asked.owner.name, role: "company owner" });
  if (!added.ok) return added;
  return ok({ company, ownerLink: await linkFor(services, company, owner) });
}

export async function addPerson(
  services: Services,
  author: { readonly company: string; readonly person: string; readonly role: Role },
  person: { readonly id: string; readonly name: string; readonly role: Role },
): Promise<Outcome<number>> {
  const came = services.clock();
  // The name is a name: it stands in the part that can be withheld.
  const entry = { kind: "person-added", what: { person: person.id, role: person.role }, who: { name: person.name } };
  return change(services, author, entry, () => [services.companies.addPerson(author.company, { ...person, came })]);
}

export const linkFor = async (services: Services, company: string, person: string): Promise<string> =>
  `/in/${await services.sessions.makeLink(company, person, services.clock())}`;

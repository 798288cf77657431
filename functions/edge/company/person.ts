import type { PersonRow } from "../adapters/companies.ts";
import type { Services } from "../services.ts";

/** A person of this company. */
export const personOf = async (services: Services, company: string, person: string | undefined): Promise<PersonRow | undefined> =>
  (await services.companies.people(company)).find(({ id }) => id === person);

import type { Question } from "#core/quality/index.ts";
import { type CompanySettings, readSettings } from "#core/record/index.ts";
import { companyFactKinds } from "#core/wire/index.ts";
import type { KnownWithRows } from "../adapters/company-known.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";
import { BASE, MADE } from "./parts.ts";

/** Jobs that are made up for while somebody waits; the others are said to be missing. */
const MADE_NOW = 24;

export interface Begun extends KnownWithRows {
  readonly settings: CompanySettings;
}

/** What the answer to a question begins with, read in one round trip: what is known of the company, and the first page of its jobs' rows. */
export async function begun(services: Services, company: string, { reads }: Pick<Question, "reads">): Promise<Begun> {
  const wanted = { parts: [BASE, ...reads], made: MADE, late: MADE_NOW };
  const known = await services.known(companyPlace(company), companyFactKinds, wanted);
  // the newest of all settings stands last
  const settings = known.things.findLast(({ kind }) => kind === "settings")?.content;
  return { ...known, settings: readSettings(settings) };
}

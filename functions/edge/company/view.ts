import type { Json } from "#core/ledger/index.ts";
import type { CompanyView, Settings } from "#core/wire/index.ts";
import type { VersionRow } from "../adapters/companies.ts";
import type { Services } from "../services.ts";
import { companyPlace } from "./change.ts";

const member = (content: Json, name: string): Json =>
  typeof content === "object" && content !== null && !Array.isArray(content) ? ((content as { [key: string]: Json })[name] ?? null) : null;

/** The company's things as they are now, each by the version that a job would take over. */
export async function companyView(services: Services, company: string): Promise<CompanyView> {
  const [things, stand] = await Promise.all([services.companies.newest(company), services.ledgers.stand(companyPlace(company), [])]);
  const settings = things.find(({ kind }) => kind === "settings");
  if (!settings) throw new Error(`company ${company} has no settings`);
  const of = (kind: VersionRow["kind"]) => things.filter((thing) => thing.kind === kind);
  const named = ({ name, number, digest }: VersionRow) => ({ name, number, digest });
  return {
    settings: { number: settings.number, digest: settings.digest, content: settings.content as unknown as Settings },
    sheets: of("sheet").map((thing) => ({
      ...named(thing),
      version: member(thing.content, "version") as number,
      title: member(thing.content, "title"),
    })),
    kitCards: of("kit card").map((thing) => ({ ...named(thing), part: String(member(thing.content, "part")) })),
    instruments: of("instrument").map((thing) => ({ ...named(thing), title: member(thing.content, "title") })),
    head: stand.head,
  };
}

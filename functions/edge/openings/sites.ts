import { type Outcome, ok } from "#core/outcome/index.ts";
import type { NewSite, Opening } from "#core/wire/index.ts";
import type { Addition } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { SiteRow } from "../adapters/sites.ts";
import type { Statement } from "../adapters/statement.ts";
import { sha256Hex } from "../chance.ts";
import { companyPlace } from "../company/change.ts";
import { fromEdge, plan } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import type { Asked } from "./asked.ts";
import { siteContents } from "./facts.ts";

export const nameOf = async (...parts: readonly string[]): Promise<string> => (await sha256Hex(parts.join(" "))).slice(0, 32);

/** The new sites of some openings, and which of them each opening has, by its job. */
export interface NewSites {
  readonly addition: Addition;
  readonly rows: readonly SiteRow[];
  readonly statements: readonly Statement[];
  readonly of: ReadonlyMap<string, string>;
}

const isNew = (site: Opening["site"]): site is NewSite => site !== undefined && !("known" in site);

/** New sites as entries of the company's ledger; the same address and marks in one go are one site. */
export async function newSites(services: Services, author: Session, asked: readonly Asked[], at: number): Promise<Outcome<NewSites>> {
  const place = companyPlace(author.company);
  const of = new Map<string, string>();
  const contents = new Map<string, Omit<NewSite, "id">>();
  for (const { place: job, opening } of asked) {
    if (!isNew(opening.site)) continue;
    const { id, ...content } = opening.site;
    const site = id ?? (await nameOf("site", author.company, asked[0]?.place.job ?? "", JSON.stringify(content)));
    of.set(job.job, site);
    contents.set(site, content);
  }
  const incoming = await Promise.all(
    [...contents].map(async ([site, content]) =>
      fromEdge(services.digest, {
        job: place.job,
        id: await nameOf("site-set", site, JSON.stringify(content)),
        kind: "site-set",
        person: author.person,
        writer: author.role,
        at,
        contents: siteContents(site, content),
        once: true,
      }),
    ),
  );
  if (incoming.length === 0) return ok({ addition: { place, rows: [] }, rows: [], statements: [], of });
  const planned = await plan(services, place, incoming, at, { whole: true });
  if (!planned.ok) return planned;
  const rows = [...contents].map(([id, content], i) => {
    const answer = planned.value.answers[i];
    return { id, content, number: answer && "number" in answer ? answer.number : 0 };
  });
  const statements = rows.map((row) => services.sites.put(author.company, row));
  return ok({ addition: { place, rows: planned.value.rows }, rows, statements, of });
}

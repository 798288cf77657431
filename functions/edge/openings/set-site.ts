import { type Outcome, ok } from "#core/outcome/index.ts";
import type { NewSite, SiteSet } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { newId, sha256Hex } from "../chance.ts";
import { change } from "../company/change.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import type { Services } from "../services.ts";
import { siteContents, siteFacts } from "./facts.ts";

/**
 * A site anew, or as it is known now. Its jobs take it over each by an entry; asked again after a break, those that have it already
 * are left as they are.
 */
export async function setSite(
  services: Services,
  author: Session,
  { id: site = newId(), ...content }: NewSite,
  at: number,
): Promise<Outcome<SiteSet>> {
  const { company } = author;
  const before = await services.sites.get(company, site);
  const same = before !== undefined && JSON.stringify(before.content) === JSON.stringify(content);
  const set = same
    ? ok(before.number)
    : await change(services, author, { kind: "site-set", ...siteContents(site, content) }, (number) => [
        services.sites.put(company, { id: site, number, content }),
      ]);
  if (!set.ok) return set;
  const row = { id: site, number: set.value, content };
  const jobs = await services.sites.jobsAt(company, site);
  for (const job of jobs) {
    for (const { kind, contents } of siteFacts(row)) {
      const id = (await sha256Hex(`${kind} ${job} ${site} ${set.value}`)).slice(0, 32);
      const said = await sayInJob(services, author, { company, job }, { id, kind, contents, at });
      if (!said.ok) return said;
    }
  }
  return ok({ site, number: set.value, jobs: [...jobs] });
}

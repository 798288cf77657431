import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { JobOpened } from "#core/wire/index.ts";
import type { Addition } from "../adapters/ledgers.ts";
import { type Numbered, plainNumber } from "../adapters/own-numbers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { SiteRow } from "../adapters/sites.ts";
import type { Statement } from "../adapters/statement.ts";
import { admissionTo } from "../jobs/admission.ts";
import { fromEdge, type Incoming, plan } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import type { Asked, Changed } from "./asked.ts";
import { type OpeningFact, openingFacts } from "./facts.ts";
import { type NewSites, nameOf } from "./sites.ts";
import { type Things, versionsFor } from "./things.ts";

/** What one opening or change would write. */
export interface PlannedJob {
  readonly addition: Addition;
  readonly statements: readonly Statement[];
  readonly opened: JobOpened;
}

export interface Planning {
  readonly services: Services;
  /** For jobs that are new for certain. */
  readonly fresh: Services;
  readonly author: Session;
  readonly things: Things;
  readonly known: ReadonlyMap<string, Numbered>;
  readonly sites: NewSites;
  readonly at: number;
}

/** Facts as entries whose ids follow from the job, so that the same thing sent twice is one. */
const entriesOf = ({ services, author, at }: Planning, job: string, occasion: string, facts: readonly OpeningFact[]) =>
  Promise.all(
    facts.map(
      async ({ kind, contents, place }, i): Promise<Incoming> => ({
        ...fromEdge(services.digest, {
          job,
          id: await nameOf(occasion, job, String(i)),
          kind,
          person: author.person,
          writer: author.role,
          at,
          contents,
          once: true,
        }),
        place,
      }),
    ),
  );

async function siteOf({ services, author, sites }: Planning, { place, opening }: Asked): Promise<Outcome<SiteRow | undefined>> {
  const named = sites.of.get(place.job) ?? (opening.site && "known" in opening.site ? opening.site.known : undefined);
  if (named === undefined) return ok(undefined);
  const site = sites.rows.find(({ id }) => id === named) ?? (await services.sites.get(author.company, named));
  return site ? ok(site) : refuse("site-unknown", "site", {});
}

export const numberOf = ({ opening: { ownNumber } }: Asked): string | undefined =>
  ownNumber === undefined ? undefined : plainNumber(ownNumber);

/** What opening one job would write. Refuses `own-number-used`, `site-unknown`, `entry-unknown-version`, and what the core does not admit. */
export async function plannedOpening(planning: Planning, one: Asked): Promise<Outcome<PlannedJob>> {
  const { services, fresh, things, known, at } = planning;
  const { place, opening } = one;
  const number = numberOf(one);
  if (number !== undefined && (known.get(number)?.job ?? place.job) !== place.job)
    return refuse("own-number-used", "ownNumber", { number });
  const site = await siteOf(planning, one);
  if (!site.ok) return site;
  const versions = await versionsFor(services, things, opening);
  if (!versions.ok) return versions;
  const taken = { company: things.company, versions: versions.value, ...(site.value && { site: site.value }) };
  const entries = await entriesOf(planning, place.job, "opening", openingFacts(opening, taken));
  const asked = one.fresh ? fresh : services;
  const options = { whole: true, begins: true, admitting: admissionTo(asked, place, entries) };
  const planned = await plan(asked, place, entries, at, options);
  if (!planned.ok) return planned;
  const { rows, head } = planned.value;
  const opened = { job: place.job, received: at, head, ...(site.value && { site: site.value.id }) };
  if (rows.length === 0) return ok({ addition: { place, rows }, statements: [], opened });
  const statements = [
    services.jobs.addJob(place, at),
    ...(site.value ? [services.sites.place(place, site.value.id)] : []),
    ...(number === undefined ? [] : [services.ownNumbers.give(place, number, one.line)]),
  ];
  return ok({ addition: { place, rows }, statements, opened });
}

/** What a change of a job that is there would write. */
export async function plannedChange(planning: Planning, { place, facts, number, line }: Changed): Promise<Outcome<PlannedJob>> {
  const { services, at } = planning;
  const entries = await entriesOf(planning, place.job, `table ${line}`, facts);
  const planned = await plan(services, place, entries, at, { whole: true, admitting: admissionTo(services, place, entries) });
  if (!planned.ok) return planned;
  const { rows, head } = planned.value;
  return ok({
    addition: { place, rows },
    statements: [services.ownNumbers.lineRead(place, number, line)],
    opened: { job: place.job, received: at, head },
  });
}

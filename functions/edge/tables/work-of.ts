import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { plainNumber, tidyNumber } from "../adapters/own-numbers.ts";
import type { Session } from "../adapters/sessions.ts";
import { newId, sha256Hex } from "../chance.ts";
import { currentJob } from "../jobs/read.ts";
import { planningOf } from "../openings/open.ts";
import { plannedOpening } from "../openings/planned.ts";
import type { Services } from "../services.ts";
import { changeOf } from "./change-of.ts";
import { openingOf, type TableNames } from "./opening-of.ts";
import type { Line } from "./view.ts";

export interface Reading {
  readonly services: Services;
  readonly session: Session;
  readonly names: TableNames;
  readonly known: Awaited<ReturnType<Services["ownNumbers"]["known"]>>;
}

/** What one line asks for, given what the company has. Unchanged since it was last taken, it is not looked into again. */
export async function workOf({ services, session, names, known }: Reading, line: Line): Promise<Line> {
  const number = plainNumber(line.said.fields.number ?? "");
  if (line.refusals.length > 0) return line;
  if (number === "") return { ...line, refusals: [refuse("table-number-missing", "number", {}).refusal] };
  const digest = await sha256Hex(JSON.stringify(line.said));
  const there = known.get(number);
  if (there === undefined) {
    const opening = openingOf(line.said, names);
    if (!opening.ok) return { ...line, refusals: opening.refusals };
    const place = { company: session.company, job: newId() };
    return {
      ...line,
      work: { place, opening: { ...opening.value, ownNumber: tidyNumber(line.said.fields.number ?? "") }, fresh: true, line: digest },
    };
  }
  const place = { company: session.company, job: there.job };
  if (there.line === digest) return { ...line, work: { place, facts: [], number, line: digest } };
  const facts = changeOf((await currentJob(services, place)).state, line.said, names);
  if (!facts.ok) return { ...line, refusals: [facts.refusal] };
  return { ...line, work: { place, facts: facts.value, number, line: digest } };
}

/** Looks at new jobs as the core would: what it does not admit belongs to its line. */
export async function looked(services: Services, session: Session, lines: readonly Line[], now: number): Promise<Outcome<readonly Line[]>> {
  const asked = lines.flatMap(({ work }) => (work && "opening" in work ? [work] : []));
  const planning = await planningOf(services, session, asked, now);
  if (!planning.ok) return planning;
  return ok(
    await Promise.all(
      lines.map(async (line) => {
        if (line.work === undefined || !("opening" in line.work)) return line;
        const planned = await plannedOpening(planning.value, line.work);
        return planned.ok ? line : { line: line.line, said: line.said, refusals: [planned.refusal] };
      }),
    ),
  );
}

import { ok, refuse } from "#core/outcome/index.ts";
import { jobOpened, opening } from "#core/wire/index.ts";
import { newId } from "../chance.ts";
import { COMPANY_LEDGER } from "../company/change.ts";
import { follow } from "../jobs/findings.ts";
import { openJobs } from "../openings/open.ts";
import { json, officeUp, route } from "./route.ts";

export const openJobTyped = route({
  method: "POST",
  path: "/api/openings",
  says: "Opens a job as the office typed it, with its site, contacts, design, kit cards and locate ticket",
  who: officeUp,
  takes: opening,
  gives: { 201: jobOpened },
  async run({ services, session, input, now, afterwards }) {
    const { id: job = newId() } = input;
    if (job.startsWith(COMPANY_LEDGER)) return refuse("request-shape", "id", { why: "reserved" });
    const place = { company: session.company, job };
    const opened = await openJobs(services, session, [{ place, opening: input }], now);
    if (!opened.ok) return opened;
    afterwards(follow(services, place));
    const [made] = opened.value;
    return made ? json(made, 201) : ok(new Response(null, { status: 500 }));
  },
});

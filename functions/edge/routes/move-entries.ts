import { refuse } from "#core/outcome/index.ts";
import { LARGEST_BATCH, moved, move as shape } from "#core/wire/index.ts";
import { follow } from "../jobs/findings.ts";
import { move } from "../jobs/move.ts";
import { arrived } from "../ledger/index.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const moveEntries = route({
  method: "POST",
  path: "/api/jobs/:job/move",
  says: "Moves entries that were filed under the wrong job; both ledgers are written, or neither",
  who: officeUp,
  takes: shape,
  largest: LARGEST_BATCH,
  gives: { 200: moved },
  async run(call) {
    const { services, session, input, now, afterwards } = call;
    const from = await jobOf(call);
    if (!from.ok) return from;
    const to = { company: session.company, job: input.to };
    if (to.job === from.value.job || !(await services.jobs.hasJob(to))) return refuse("job-unknown", "to", {});
    const people = await services.companies.people(session.company);
    const expected = {
      digest: services.digest,
      sender: { person: session.person, role: session.role, people },
      sent: input.sent ?? now,
      // Both kinds are the program's to write: only this command makes sure that there are two of them.
      writer: "program" as const,
    };
    const out = await arrived(input.outEntry, "outEntry", { ...expected, job: from.value.job });
    if (!out.ok) return out;
    const into = await arrived(input.inEntry, "inEntry", { ...expected, job: to.job });
    if (!into.ok) return into;
    const asked = { from: from.value, to, entries: input.entries, out: out.value, in: into.value };
    const written = await move(services, asked, now);
    if (!written.ok) return written;
    afterwards(Promise.all([follow(services, from.value), follow(services, to)]));
    return json(written.value);
  },
});

import { type EntryReference, factsOf, type MovedEntry, recordBeforeMove, withCorrections } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { refuse } from "#core/outcome/index.ts";
import { type MovedToJob, movedToJob, moveToJob as shape } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { newId } from "../chance.ts";
import { follow } from "../jobs/findings.ts";
import { move, movedOf } from "../jobs/move.ts";
import { currentJob } from "../jobs/read.ts";
import { fromEdge } from "../ledger/index.ts";
import { tellKnown } from "../photos/owed-work.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

const photoOf = ({ what }: MovedEntry): readonly string[] => {
  const photo = typeof what === "object" && what !== null && "photo" in what ? what.photo : undefined;
  return typeof photo === "string" ? [photo] : [];
};

export const moveToJob = route({
  method: "POST",
  path: "/api/jobs/:job/moves",
  says: "Moves pictures or whole visits to the job that they belong to, with what corrects them; tells which records must be issued again",
  who: officeUp,
  takes: shape,
  gives: { 200: movedToJob },
  async run(call) {
    const { services, session, input, now } = call;
    const from = await jobOf(call);
    if (!from.ok) return from;
    const { to: job, reason, id = newId() } = input;
    const to: Place = { company: session.company, job };
    if (job === from.value.job || !(await services.jobs.hasJob(to))) return refuse("job-unknown", "to", {});
    const { state, stored } = await currentJob(services, from.value);
    // asked for once more, what goes is what went
    const before = factsOf(state, "moved-out").find((fact) => fact.id === `${id}-moved-out`);
    const wanted = new Set(before?.what.entries.map((one) => one.id) ?? withCorrections(state, input.entries));
    const rows = stored.filter(({ envelope }) => wanted.has(envelope.id));
    const there = new Set(rows.map(({ envelope }) => envelope.id));
    const gone = input.entries.findIndex((one) => !there.has(one));
    if (gone >= 0) return refuse("entry-unknown-entry", `entries/${gone}`, {});
    const entries: readonly EntryReference[] = rows.map(({ envelope, digest }) => ({ id: envelope.id, digest }));
    const moved = rows.map(movedOf);
    // only this command makes sure that there are two of them: they are the program's to write, in the name of who moves
    const entry = (place: Place, kind: "moved-out" | "moved-in", what: object) =>
      fromEdge(services.digest, {
        job: place.job,
        id: `${id}-${kind}`,
        kind,
        person: session.person,
        writer: "program",
        at: now,
        contents: { what: what as unknown as Json },
        once: true,
      });
    const written = await move(
      services,
      {
        from: from.value,
        to,
        entries,
        out: entry(from.value, "moved-out", { entries, to: job, reason }),
        in: entry(to, "moved-in", { from: from.value.job, reason, entries: moved }),
      },
      now,
    );
    if (!written.ok) return written;
    await Promise.all([follow(services, from.value), follow(services, to)]);
    await tellKnown(services, session.company, job, moved.flatMap(photoOf));
    const again: MovedToJob["issueAgain"] = [];
    for (const place of [from.value, to]) {
      const { state: after } = await currentJob(services, place);
      const version = recordBeforeMove(after);
      if (version !== undefined) again.push({ job: place.job, title: after.opened?.title ?? "", version });
    }
    return json({ ...written.value, entries: entries.length, issueAgain: again });
  },
});

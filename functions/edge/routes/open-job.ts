import { refuse } from "#core/outcome/index.ts";
import { batch, id, jobMade, LARGEST_BATCH, read } from "#core/wire/index.ts";
import { plainNumber } from "../adapters/own-numbers.ts";
import { COMPANY_LEDGER } from "../company/change.ts";
import { appendToJob } from "../jobs/append.ts";
import { judgeBatch } from "../jobs/batch.ts";
import { follow } from "../jobs/findings.ts";
import { json, officeUp, route } from "./route.ts";

export const openJob = route({
  method: "POST",
  path: "/api/jobs",
  says: "Opens a job with its first entries; the first is of kind job-opened and carries the job's id",
  who: officeUp,
  withPeople: true,
  takes: batch,
  largest: LARGEST_BATCH,
  gives: { 201: jobMade },
  async run({ services, session, input, now, afterwards }) {
    const first = input.entries[0] as { sealed?: { job?: unknown; kind?: unknown } } | null;
    const job = read(id, first?.sealed?.job, "entry-shape", "entries/0/sealed/job");
    if (!job.ok) return job;
    if (job.value.startsWith(COMPANY_LEDGER)) return refuse("entry-shape", "entries/0/sealed/job", { why: "reserved" });
    if (first?.sealed?.kind !== "job-opened") return refuse("entry-shape", "entries/0/sealed/kind", { why: "job-opened first" });
    const place = { company: session.company, job: job.value };
    const judged = await judgeBatch(services, session, place, input);
    const bad = judged.refused.find(({ index }) => index === 0);
    if (bad) return { ok: false, refusal: bad.refusal };
    const number = ownNumberIn(input.entries[0]);
    const appended = await appendToJob(services, place, judged.good, now, {
      begins: true,
      also: () => [
        services.jobs.addJob(place, now),
        ...(number === undefined ? [] : [services.ownNumbers.giveIfFree(place, plainNumber(number))]),
      ],
    });
    if (!appended.ok) return appended;
    afterwards(follow(services, place));
    const answers = judged.answers(appended.value.answers, session);
    return json({ job: place.job, received: now, head: appended.value.head, answers }, 201);
  },
});

/** The company's own number, as the first entry says it. */
function ownNumberIn(first: unknown): string | undefined {
  const number = (first as { body?: { what?: { content?: { ownNumber?: unknown } } } } | null)?.body?.what?.content?.ownNumber;
  return typeof number === "string" && number.trim() !== "" ? number : undefined;
}

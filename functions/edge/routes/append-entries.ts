import { appended, batch, LARGEST_BATCH } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { appendToHeldJob, appendToJob } from "../jobs/append.ts";
import { type Judged, judgeBatch } from "../jobs/batch.ts";
import { photosNamed } from "../jobs/consequences.ts";
import { follow } from "../jobs/findings.ts";
import { pause } from "../lanes.ts";
import type { Appended } from "../ledger/index.ts";
import { tellKnown } from "../photos/owed-work.ts";
import { anyRole, type Call, json, placeOf, route } from "./route.ts";

export const appendEntries = route({
  method: "POST",
  path: "/api/jobs/:job/entries",
  says: "Appends a batch of entries; each is answered by itself",
  who: anyRole,
  withPeople: true,
  takes: batch,
  largest: LARGEST_BATCH,
  gives: { 200: appended },
  async asKnown(call) {
    const { services, session, input, now } = call;
    const place = placeOf(call);
    if (!place.ok) return undefined;
    const judged = await judgeBatch(services, session, place.value, input);
    if (judged.refused.length > 0) return undefined;
    const unless = services.sessions.unlessOver(session, judged.authors, services.clock());
    const written = await appendToHeldJob(services, place.value, judged.good, now, unless);
    return written && answered(call, place.value, judged, written);
  },
  async run(call) {
    const { services, session, input, now } = call;
    const place = placeOf(call);
    if (!place.ok) return place;
    const judged = await judgeBatch(services, session, place.value, input);
    const written = await appendToJob(services, place.value, judged.good, now, { isThere: true });
    return written.ok ? answered(call, place.value, judged, written.value) : written;
  },
});

function answered({ services, session, now, afterwards }: Call, place: Place, judged: Judged, written: Appended) {
  const { head, answers, rows } = written;
  if (rows.length > 0) {
    const photos = rows.flatMap(photosNamed);
    // the answer leaves first: judging a job keeps the isolate's one thread for longer than everything before it
    afterwards(
      pause(0)
        .then(() => follow(services, place))
        .then(() => tellKnown(services, session.company, place.job, photos)),
    );
  }
  return json({ received: now, head, answers: judged.answers(answers, session) });
}

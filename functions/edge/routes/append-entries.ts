import { appended, batch, LARGEST_BATCH } from "#core/wire/index.ts";
import { appendToJob } from "../jobs/append.ts";
import { judgeBatch } from "../jobs/batch.ts";
import { photosNamed } from "../jobs/consequences.ts";
import { follow } from "../jobs/findings.ts";
import { tellKnown } from "../photos/owed-work.ts";
import { anyRole, json, placeOf, route } from "./route.ts";

export const appendEntries = route({
  method: "POST",
  path: "/api/jobs/:job/entries",
  says: "Appends a batch of entries; each is answered by itself",
  who: anyRole,
  withPeople: true,
  takes: batch,
  largest: LARGEST_BATCH,
  gives: { 200: appended },
  async run(call) {
    const { services, session, input, now, afterwards } = call;
    const place = placeOf(call);
    if (!place.ok) return place;
    const judged = await judgeBatch(services, session, place.value, input);
    const written = await appendToJob(services, place.value, judged.good, now, { isThere: true });
    if (!written.ok) return written;
    const { head, answers, rows } = written.value;
    if (rows.length > 0) {
      const photos = rows.flatMap(photosNamed);
      afterwards(follow(services, place.value).then(() => tellKnown(services, session.company, place.value.job, photos)));
    }
    return json({ received: now, head, answers: judged.answers(answers, session) });
  },
});

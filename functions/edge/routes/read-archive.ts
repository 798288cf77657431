import { archiveRead } from "#core/wire/index.ts";
import { readArchive as read } from "../archives/read.ts";
import { follow } from "../jobs/findings.ts";
import { json, officeUp, route } from "./route.ts";

export const readArchive = route({
  method: "POST",
  path: "/api/archives",
  says: "Reads a job from an archive, its ledger and every part verified: all of it or nothing",
  who: officeUp,
  takes: "bytes",
  largest: 4_294_967_295,
  gives: { 200: archiveRead, 201: archiveRead },
  async run({ services, session, request, now, afterwards }) {
    const taken = await read(services, session.company, request.body, now);
    if (!taken.ok) return taken;
    if (taken.value.outcome === "already there") return json(taken.value);
    afterwards(follow(services, { company: session.company, job: taken.value.job }));
    return json(taken.value, 201);
  },
});

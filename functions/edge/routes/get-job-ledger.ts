import { ledger } from "#core/wire/index.ts";
import { ledgerOf, readJob } from "../jobs/read.ts";
import { anyRole, jobOf, json, route } from "./route.ts";

export const getJobLedger = route({
  method: "GET",
  path: "/api/jobs/:job/ledger",
  says: "A job's ledger with the versions that it took over",
  who: anyRole,
  gives: { 200: ledger },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { stored, versions } = await readJob(call.services, place.value);
    return json(ledgerOf(place.value.job, stored, versions));
  },
});

import { rebuilt } from "#core/wire/index.ts";
import { rebuild } from "../jobs/rebuild.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const rebuildJob = route({
  method: "GET",
  path: "/api/rebuild/:job",
  says: "Computes a job's findings and the company's rows about it again from its ledger and compares them with those stored",
  who: officeUp,
  gives: { 200: rebuilt },
  async run(call) {
    const place = await jobOf(call);
    return place.ok ? json(await rebuild(call.services, place.value, false)) : place;
  },
});

export const rewriteJob = route({
  method: "POST",
  path: "/api/rebuild/:job",
  says: "The same, and writes anew what differs",
  who: officeUp,
  gives: { 200: rebuilt },
  async run(call) {
    const place = await jobOf(call);
    return place.ok ? json(await rebuild(call.services, place.value, true)) : place;
  },
});

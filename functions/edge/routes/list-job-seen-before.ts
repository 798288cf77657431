import { seenBeforeList } from "#core/wire/index.ts";
import { listed } from "../photos/seen-before.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const listJobSeenBefore = route({
  method: "GET",
  path: "/api/jobs/:job/seen-before",
  says: "The same for the photos that a job names",
  who: officeUp,
  gives: { 200: seenBeforeList },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    return json({ seenBefore: await listed(call.services, place.value.company, place.value.job) });
  },
});

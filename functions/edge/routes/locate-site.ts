import { entryMade, sitePlace } from "#core/wire/index.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const locateSite = route({
  method: "POST",
  path: "/api/jobs/:job/site",
  says: "Where the site is and how far it reaches, for pictures to be held beside",
  who: officeUp,
  takes: sitePlace,
  gives: { 201: entryMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { latitude, longitude, accuracy, reaches, how } = input;
    const made = await sayInJob(services, session, place.value, {
      kind: "site-located",
      contents: {
        what: { how, ...(reaches === undefined ? {} : { reaches }) },
        where: { latitude, longitude, ...(accuracy === undefined ? {} : { accuracy }) },
      },
      at: now,
    });
    return made.ok ? json(made.value, 201) : made;
  },
});

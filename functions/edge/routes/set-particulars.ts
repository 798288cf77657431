import { entryMade, particulars } from "#core/wire/index.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { particularsSaid } from "../openings/particulars.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const setParticulars = route({
  method: "POST",
  path: "/api/jobs/:job/particulars",
  says: "Changes a job's particulars: title, order and invoice number, crew, contacts; only what is named changes",
  who: officeUp,
  takes: particulars,
  gives: { 201: entryMade },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { services, session, input, now } = call;
    const made = await sayInJob(services, session, place.value, { ...particularsSaid(input), at: now });
    return made.ok ? json(made.value, 201) : made;
  },
});

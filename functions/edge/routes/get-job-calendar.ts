import { ok } from "#core/outcome/index.ts";
import { warrantyCalendar } from "#core/record/index.ts";
import { readTerms, warrantyClocks } from "#core/warranty/index.ts";
import { currentJob } from "../jobs/read.ts";
import { termsSaid } from "../warranties/terms.ts";
import { jobOf, officeUp, route } from "./route.ts";

export const getJobCalendar = route({
  method: "GET",
  path: "/api/jobs/:job/calendar",
  says: "A calendar file (RFC 5545) of a job's services, of what is to be registered and of last days of cover",
  who: officeUp,
  gives: { 200: "calendar" },
  async run(call) {
    const { services, session, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const [{ state }, company] = await Promise.all([currentJob(services, place.value), termsSaid(services, session.company)]);
    const clocks = warrantyClocks(state);
    const text = warrantyCalendar({
      job: place.value.job,
      title: state.opened?.title ?? "",
      clocks,
      terms: readTerms(clocks.ownTerms ?? company),
      stamp: now,
    });
    const headers = { "content-type": "text/calendar; charset=utf-8", "content-disposition": 'attachment; filename="calendar.ics"' };
    return ok(new Response(text, { headers }));
  },
});

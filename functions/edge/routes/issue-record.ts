import { newRecord, recordMade } from "#core/wire/index.ts";
import { issue } from "../records/issue.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const issueRecord = route({
  method: "POST",
  path: "/api/jobs/:job/records",
  says: "Issues the as-buried record of a job",
  who: officeUp,
  takes: newRecord,
  gives: { 201: recordMade },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const issued = await issue(call.services, place.value, call.input, call.session, call.now);
    return issued.ok ? json(issued.value, 201) : issued;
  },
});

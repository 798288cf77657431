import { newRecord, recordMade } from "#core/wire/index.ts";
import { follow } from "../jobs/findings.ts";
import { pause } from "../lanes.ts";
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
    if (!issued.ok) return issued;
    // the answer leaves first: judging keeps the isolate's one thread
    call.afterwards(pause(0).then(() => follow(call.services, place.value)));
    return json(issued.value, 201);
  },
});

import { records } from "#core/wire/index.ts";
import { recordView } from "../records/view.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const listRecords = route({
  method: "GET",
  path: "/api/jobs/:job/records",
  says: "The records issued of a job",
  who: officeUp,
  gives: { 200: records },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const rows = await call.services.records.ofJob(place.value);
    return json({
      records: rows.map((row) => ({ ...recordView(row), issued: row.issued, head: { number: row.head_number, hash: row.head_hash } })),
    });
  },
});

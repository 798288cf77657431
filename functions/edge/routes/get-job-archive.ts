import { ok } from "#core/outcome/index.ts";
import { listOf } from "../archives/list-of.ts";
import { archiveStream } from "../archives/write.ts";
import { jobOf, officeUp, route } from "./route.ts";

export const getJobArchive = route({
  method: "GET",
  path: "/api/jobs/:job/archive",
  says: "A job whole as one archive: ledger, photos, records",
  who: officeUp,
  asks: { photos: "none: without the photos' bytes" },
  gives: { 200: "zip" },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { services, request, now } = call;
    const withBytes = new URL(request.url).searchParams.get("photos") !== "none";
    const listed = await listOf(services, place.value, withBytes, now);
    if (!listed.ok) return listed;
    const { list, ledger } = listed.value;
    const headers = { "content-type": "application/zip", "content-disposition": `attachment; filename="${place.value.job}.zip"` };
    return ok(new Response(archiveStream(services, place.value.company, list, ledger), { headers }));
  },
});

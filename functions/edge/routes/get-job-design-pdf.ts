import { ok } from "#core/outcome/index.ts";
import { designPrinted } from "../jobs/design.ts";
import { jobOf, officeUp, route } from "./route.ts";

export const getJobDesignPdf = route({
  method: "GET",
  path: "/api/jobs/:job/design/pdf",
  says: "The design check before the dig as one printed page",
  who: officeUp,
  gives: { 200: "pdf" },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const printed = await designPrinted(call.services, place.value);
    if (!printed.ok) return printed;
    const headers = {
      "content-type": "application/pdf",
      "content-length": String(printed.value.length),
      "content-disposition": 'inline; filename="design-check.pdf"',
    };
    return ok(new Response(printed.value.stream, { headers }));
  },
});

import { ok } from "#core/outcome/index.ts";
import { cardsPrinted } from "../jobs/cards.ts";
import { jobOf, officeUp, route } from "./route.ts";

export const getJobCardsPdf = route({
  method: "GET",
  path: "/api/jobs/:job/cards/pdf",
  says: "Cards that lie in a job's pictures and name its steps, a printed page each",
  who: officeUp,
  gives: { 200: "pdf" },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const printed = await cardsPrinted(call.services, place.value);
    if (!printed.ok) return printed;
    const headers = {
      "content-type": "application/pdf",
      "content-length": String(printed.value.length),
      "content-disposition": 'inline; filename="cards.pdf"',
    };
    return ok(new Response(printed.value.stream, { headers }));
  },
});

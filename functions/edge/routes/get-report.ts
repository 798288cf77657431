import { ok } from "#core/outcome/index.ts";
import { reportPrinted } from "../questions/report.ts";
import { ownerOnly, route } from "./route.ts";

export const getReport = route({
  method: "GET",
  path: "/api/report",
  says: "The company owner's report of a month as PDF",
  who: ownerOnly,
  asks: { month: "YYYY-MM; without it this month so far" },
  gives: { 200: "pdf" },
  async run({ services, session, request }) {
    const month = new URL(request.url).searchParams.get("month");
    const printed = await reportPrinted(services, session, month === "" ? null : month);
    if (!printed.ok) return printed;
    const headers = {
      "content-type": "application/pdf",
      "content-length": String(printed.value.length),
      "content-disposition": 'inline; filename="report.pdf"',
    };
    return ok(new Response(printed.value.stream, { headers }));
  },
});

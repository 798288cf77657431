import { ok } from "#core/outcome/index.ts";
import { fileKey } from "../records/files.ts";
import { releasedHeaders, releasedRow } from "../released/opened.ts";
import { everyone, route } from "./route.ts";

export const getReleasedPdf = route({
  method: "GET",
  path: "/released/:token/pdf",
  says: "A released record as it was printed",
  who: everyone,
  gives: { 200: "pdf" },
  async run(call) {
    const row = await releasedRow(call);
    if (!row.ok) return row;
    const found = await call.services.store.get(fileKey(row.value, "pdf"));
    if (!found.ok) return found;
    const headers = {
      ...releasedHeaders,
      "content-type": "application/pdf",
      "content-length": String(found.value.length),
      "content-disposition": `inline; filename="record-${row.value.version}.pdf"`,
    };
    return ok(new Response(found.value.stream, { headers }));
  },
});

import { ok } from "#core/outcome/index.ts";
import { releasedPage } from "#templates/record/index.ts";
import { page } from "../page.ts";
import { releasedHeaders, releasedRecord } from "../released/opened.ts";
import { everyone, route } from "./route.ts";

// It runs nothing and loads nothing but the record's own pictures.
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

export const getReleased = route({
  method: "GET",
  path: "/released/:token",
  says: "A released record as a page for its receiver's phone",
  who: everyone,
  gives: { 200: "page", 303: "nothing", 404: "page" },
  async run(call) {
    const opened = await releasedRecord(call);
    if (!opened.ok && opened.refusal.code === "release-ended") return ok(page(call.request, "release-ended"));
    const at = `/released/${call.parameters.token}`;
    const asPrinted = ok(new Response(null, { status: 303, headers: { ...releasedHeaders, location: `${at}/pdf` } }));
    // what no page can be made of opens as it was printed, and so does one that was issued before there was this page
    if (!opened.ok) return opened.refusal.code === "record-unreadable" ? asPrinted : opened;
    if (opened.value.model.words["released-pdf"] === undefined) return asPrinted;
    const html = releasedPage(opened.value.model, {
      pdf: `${at}/pdf`,
      photo: ({ photo, rendition, missing = "" }) =>
        rendition === undefined ? { missing } : { address: `${at}/pictures/${photo}`, later: true },
    });
    return ok(
      new Response(html, {
        headers: { ...releasedHeaders, "content-type": "text/html; charset=utf-8", "content-security-policy": POLICY },
      }),
    );
  },
});

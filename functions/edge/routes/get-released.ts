import { ok } from "#core/outcome/index.ts";
import { releasedPage } from "#templates/record/index.ts";
import { page } from "../page.ts";
import { releasedHeaders, releasedRecord } from "../released/opened.ts";
import { everyone, route } from "./route.ts";

// It runs nothing and loads nothing but the record's own pictures.
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** For who may read either language. */
const ended = (): Response =>
  page(
    404,
    "This link has ended · Este enlace terminó",
    "Ask the company that built it for a new one. · Pida uno nuevo a la empresa que lo construyó.",
  );

export const getReleased = route({
  method: "GET",
  path: "/released/:token",
  says: "A released record as a page for its receiver's phone",
  who: everyone,
  gives: { 200: "page", 303: "nothing", 404: "page" },
  async run(call) {
    const opened = await releasedRecord(call);
    if (!opened.ok && opened.refusal.code === "release-ended") return ok(ended());
    if (!opened.ok) return opened;
    const at = `/released/${call.parameters.token}`;
    // one that was issued before there was this page opens as it was printed
    if (opened.value.model.words["released-pdf"] === undefined)
      return ok(new Response(null, { status: 303, headers: { ...releasedHeaders, location: `${at}/pdf` } }));
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

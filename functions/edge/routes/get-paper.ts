import { ok, refuse } from "#core/outcome/index.ts";
import { isSha, paperKey } from "#functions/shared/index.ts";
import { officeUp, route } from "./route.ts";

export const getPaper = route({
  method: "GET",
  path: "/api/papers/:sha256",
  says: "A paper as it was sent, to be saved: nothing of it is shown or run here",
  who: officeUp,
  gives: { 200: "pdf" },
  async run({ services, session, parameters }) {
    const sha256 = parameters.sha256 ?? "";
    if (!isSha(sha256) || (await services.papers.get(session.company, sha256)) === undefined) return refuse("paper-unknown", "paper", {});
    const found = await services.store.get(paperKey(session.company, sha256));
    if (!found.ok) return found;
    const headers = {
      "content-type": "application/pdf",
      "content-length": String(found.value.length),
      "content-disposition": `attachment; filename="${sha256.slice(0, 12)}.pdf"`,
      "content-security-policy": "default-src 'none'; sandbox",
      "cache-control": "private, no-store",
    };
    return ok(new Response(found.value.stream, { headers }));
  },
});

import { ok, refuse } from "#core/outcome/index.ts";
import { isSha, markKeys } from "#functions/shared/index.ts";
import { anyRole, route } from "./route.ts";

export const getMark = route({
  method: "GET",
  path: "/api/company/mark/:sha256",
  says: "The company's mark as it is drawn on screens",
  who: anyRole,
  gives: { 200: "png" },
  async run({ services, session, parameters }) {
    const mark = parameters.sha256 ?? "";
    if (!isSha(mark)) return refuse("mark-unknown", "mark", {});
    const found = await services.store.get(markKeys(session.company, mark).screen);
    if (!found.ok) return found.refusal.code === "store-unavailable" ? found : refuse("mark-unknown", "mark", {});
    const headers = {
      "content-type": "image/png",
      "content-length": String(found.value.length),
      "cache-control": "private, max-age=31536000, immutable",
      "content-security-policy": "default-src 'none'; sandbox",
    };
    return ok(new Response(found.value.stream, { headers }));
  },
});

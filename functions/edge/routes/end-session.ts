import { ok } from "#core/outcome/index.ts";
import { noCookie } from "../cookie.ts";
import { anyRole, route } from "./route.ts";

export const endSession = route({
  method: "POST",
  path: "/api/session/end",
  says: "Ends this session",
  who: anyRole,
  gives: { 204: "nothing" },
  async run({ services, session, request, now }) {
    await services.sessions.end(session.hash, now);
    return ok(new Response(null, { status: 204, headers: { "set-cookie": noCookie(request) } }));
  },
});

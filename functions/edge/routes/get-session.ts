import { ok } from "#core/outcome/index.ts";
import { session as shape } from "#core/wire/index.ts";
import { ownLook, ownWords } from "../company/own-words.ts";
import { sessionCookie } from "../cookie.ts";
import { anyRole, route } from "./route.ts";

export const getSession = route({
  method: "GET",
  path: "/api/session",
  says: "Who is signed in; a token that is a day old is replaced",
  who: anyRole,
  gives: { 200: shape },
  async run({ services, session: { hash, ends, ...session }, request, now }) {
    const content = await services.companies.settings(session.company);
    const words = ownWords(content, session.language);
    const token = request.method === "GET" ? await services.sessions.renew(hash, now) : undefined;
    const headers: HeadersInit = token === undefined ? {} : { "set-cookie": sessionCookie(token, request, ends - now) };
    return ok(Response.json({ ...session, ...ownLook(content), ...(words && { words }) }, { headers }));
  },
});

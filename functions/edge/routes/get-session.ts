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
  async run({ services, session, request, now }) {
    const { company, companyName, person, name, role, phone, units, language } = session;
    const content = await services.companies.settings(session.company);
    const words = ownWords(content, session.language);
    const token = request.method === "GET" ? await services.sessions.renew(session.hash, now) : undefined;
    const headers: HeadersInit = token === undefined ? {} : { "set-cookie": sessionCookie(token, request, session.ends - now) };
    return ok(
      Response.json(
        { company, companyName, person, name, role, phone, units, language, ...ownLook(content), ...(words && { words }) },
        { headers },
      ),
    );
  },
});

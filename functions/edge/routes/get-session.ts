import { session as shape } from "#core/wire/index.ts";
import { ownLook, ownWords } from "../company/own-words.ts";
import { anyRole, json, route } from "./route.ts";

export const getSession = route({
  method: "GET",
  path: "/api/session",
  says: "Who is signed in",
  who: anyRole,
  gives: { 200: shape },
  async run({ services, session: { hash: _, ...session } }) {
    const content = await services.companies.settings(session.company);
    const words = ownWords(content, session.language);
    return json({ ...session, ...ownLook(content), ...(words && { words }) });
  },
});

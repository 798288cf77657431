import { session as shape } from "#core/wire/index.ts";
import { ownWords } from "../company/own-words.ts";
import { anyRole, json, route } from "./route.ts";

export const getSession = route({
  method: "GET",
  path: "/api/session",
  says: "Who is signed in",
  who: anyRole,
  gives: { 200: shape },
  async run({ services, session: { hash: _, ...session } }) {
    const words = ownWords(await services.companies.settings(session.company), session.language);
    return json(words === undefined ? session : { ...session, words });
  },
});

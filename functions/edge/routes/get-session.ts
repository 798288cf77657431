import { session as shape } from "#core/wire/index.ts";
import { anyRole, json, route } from "./route.ts";

export const getSession = route({
  method: "GET",
  path: "/api/session",
  says: "Who is signed in",
  who: anyRole,
  gives: { 200: shape },
  async run({ session: { hash: _, ...session } }) {
    return json(session);
  },
});

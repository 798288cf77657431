import { triedAgain, tryAgain } from "#core/wire/index.ts";
import { tryAgainNow } from "../photos/laid-aside.ts";
import { json, officeUp, route } from "./route.ts";

export const tryLaidAside = route({
  method: "POST",
  path: "/api/laid-aside/again",
  says: "Tries again now what did not go through: what is named, or all of it",
  who: officeUp,
  takes: tryAgain,
  gives: { 200: triedAgain },
  run: async ({ services, session, input }) => json({ again: await tryAgainNow(services, session.company, input.work) }),
});

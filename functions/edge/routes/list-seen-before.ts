import { seenBeforeList } from "#core/wire/index.ts";
import { listed } from "../photos/seen-before.ts";
import { json, officeUp, route } from "./route.ts";

export const listSeenBefore = route({
  method: "GET",
  path: "/api/seen-before",
  says: "Photos of the company that show what another one showed before, the newest first",
  who: officeUp,
  gives: { 200: seenBeforeList },
  run: async ({ services, session }) => json({ seenBefore: await listed(services, session.company) }),
});

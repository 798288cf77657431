import { personRequests } from "#core/wire/index.ts";
import { todayOf } from "../persons/asked.ts";
import { requestsOf } from "../persons/requests.ts";
import { json, officeUp, route } from "./route.ts";

export const listPersons = route({
  method: "GET",
  path: "/api/persons",
  says: "Who asked for his data or its removal, newest first, and how each request stands",
  who: officeUp,
  gives: { 200: personRequests },
  run: async (call) => json({ requests: await requestsOf(call.services, call.session.company, await todayOf(call)) }),
});

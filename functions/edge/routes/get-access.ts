import { access } from "#core/wire/index.ts";
import { accessOf } from "../access/view.ts";
import { anyRole, json, route } from "./route.ts";

export const getAccess = route({
  method: "GET",
  path: "/api/access",
  says: "One's own passkeys, and the devices that one is signed in on",
  who: anyRole,
  gives: { 200: access },
  async run({ services, session, now }) {
    return json(await accessOf(services, session.company, { id: session.person, role: session.role }, session.phone, now));
  },
});

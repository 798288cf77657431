import { refuse } from "#core/outcome/index.ts";
import { access } from "#core/wire/index.ts";
import { mayEnd } from "../access/may-end.ts";
import { accessOf } from "../access/view.ts";
import { personOf } from "../company/person.ts";
import { json, officeUp, route } from "./route.ts";

export const getPersonsAccess = route({
  method: "GET",
  path: "/api/people/:person/access",
  says: "A person's passkeys and devices; the office sees the crew's",
  who: officeUp,
  gives: { 200: access },
  async run({ services, session, parameters, now }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person) return refuse("person-unknown", "person", {});
    if (!mayEnd(session, person)) return refuse("role-not-allowed", "person", { role: session.role });
    return json(await accessOf(services, session.company, person, session.phone, now));
  },
});

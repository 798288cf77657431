import { refuse } from "#core/outcome/index.ts";
import { personOf } from "../company/person.ts";
import { done, officeUp, route } from "./route.ts";

export const withdrawSessions = route({
  method: "DELETE",
  path: "/api/people/:person/sessions",
  says: "Withdraws a person's sessions and unused links at once",
  who: officeUp,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person) return refuse("person-unknown", "person", {});
    if (session.role === "office" && person.role === "company owner") return refuse("role-not-allowed", "person", { role: session.role });
    await services.sessions.withdraw(session.company, person.id, now);
    return done();
  },
});

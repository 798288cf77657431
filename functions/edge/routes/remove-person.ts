import { refuse } from "#core/outcome/index.ts";
import { leave } from "../company/leave.ts";
import { personOf } from "../company/person.ts";
import { done, ownerOnly, route } from "./route.ts";

export const removePerson = route({
  method: "DELETE",
  path: "/api/people/:person",
  says: "A person has left the company: sessions and unused links end at once, what was entered stays",
  who: ownerOnly,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person) return refuse("person-unknown", "person", {});
    // Of the company owners one always stays: nobody sends himself away.
    if (person.id === session.person) return refuse("role-not-allowed", "person", { role: session.role });
    const left = await leave(services, session, person, now);
    return left.ok ? done() : left;
  },
});

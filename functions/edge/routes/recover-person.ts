import { refuse } from "#core/outcome/index.ts";
import { link } from "#core/wire/index.ts";
import { counted, limits } from "../access/limits.ts";
import { personOf } from "../company/person.ts";
import { recover } from "../company/recover.ts";
import { json, ownerOnly, route } from "./route.ts";

export const recoverPerson = route({
  method: "POST",
  path: "/api/people/:person/recovery",
  says: "For who has lost the passkeys: all of them, sessions, links and codes end at once, and there is a new one-time link",
  who: ownerOnly,
  gives: { 201: link },
  async run({ services, session, parameters, now }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person || person.left !== undefined) return refuse("person-unknown", "person", {});
    // another company owner does it: whoever took over one session must not take the account with it
    if (person.id === session.person) return refuse("role-not-allowed", "person", { role: session.role });
    const may = await counted(services, limits.making, session.person);
    if (!may.ok) return may;
    const recovered = await recover(services, session, person.id, now);
    return recovered.ok ? json({ link: recovered.value }, 201) : recovered;
  },
});

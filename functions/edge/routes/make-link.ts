import { refuse } from "#core/outcome/index.ts";
import { link } from "#core/wire/index.ts";
import { counted, limits } from "../access/limits.ts";
import { linkFor } from "../company/found.ts";
import { personOf } from "../company/person.ts";
import { json, officeUp, route } from "./route.ts";

export const makeLink = route({
  method: "POST",
  path: "/api/people/:person/links",
  says: "A one-time sign-in link for a person, good for seven days",
  who: officeUp,
  gives: { 201: link },
  async run({ services, session, parameters }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person || person.left !== undefined) return refuse("person-unknown", "person", {});
    // Else the office could sign in as the company owner, or as somebody else of the office.
    if (session.role === "office" && person.role !== "crew") return refuse("role-not-allowed", "person", { role: session.role });
    // a link beside a passkey would be the weaker of two doors
    if ((await services.passkeys.of(session.company, person.id)).length > 0) return refuse("link-passkeys", "person", {});
    const may = await counted(services, limits.making, session.person);
    if (!may.ok) return may;
    return json({ link: await linkFor(services, session.company, person.id) }, 201);
  },
});

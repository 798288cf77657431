import { refuse } from "#core/outcome/index.ts";
import { link, ownerRecovery } from "#core/wire/index.ts";
import { personOf } from "../company/person.ts";
import { recover } from "../company/recover.ts";
import { at } from "../shards/index.ts";
import { json, operator, route } from "./route.ts";

export const recoverOwner = route({
  method: "POST",
  path: "/api/companies/:company/recovery",
  says: "For a company whose only owner has lost the passkeys: the same as another company owner would do, by whoever runs the server",
  who: operator,
  takes: ownerRecovery,
  gives: { 201: link },
  async run({ services: edge, parameters, input, now }) {
    const company = parameters.company ?? "";
    const services = await at(edge, company);
    const person = await personOf(services, company, input.person);
    if (person?.role !== "company owner" || person.left !== undefined) return refuse("person-unknown", "person", {});
    const author = { company, person: person.id, role: person.role };
    const recovered = await recover(services, author, person.id, now, "operator");
    return recovered.ok ? json({ link: recovered.value }, 201) : recovered;
  },
});

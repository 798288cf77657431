import { refuse } from "#core/outcome/index.ts";
import { companyMade, newCompany } from "#core/wire/index.ts";
import { newId } from "../chance.ts";
import { found } from "../company/found.ts";
import { whereFounded } from "../shards/index.ts";
import { json, operator, route } from "./route.ts";

export const foundCompany = route({
  method: "POST",
  path: "/api/companies",
  says: "Founds a company; answers its owner's one-time link",
  who: operator,
  takes: newCompany,
  gives: { 201: companyMade },
  async run({ services, input }) {
    const id = input.id ?? newId();
    const made = await found(await whereFounded(services, id), { ...input, id });
    if (!made) return refuse("request-shape", "id", { why: "taken" });
    return made.ok ? json(made.value, 201) : made;
  },
});

import { refuse } from "#core/outcome/index.ts";
import { keySet as shape } from "#core/wire/index.ts";
import { keySet } from "../seals/index.ts";
import { at } from "../shards/index.ts";
import { everyone, json, route } from "./route.ts";

export const getCompanyKeys = route({
  method: "GET",
  path: "/api/companies/:company/keys",
  says: "The public keys by which a company's records are checked, as a JWK set",
  who: everyone,
  gives: { 200: shape },
  async run({ services: edge, parameters }) {
    const services = await at(edge, parameters.company ?? "");
    const company = await services.companies.get(parameters.company ?? "");
    return company ? json(await keySet(services, company)) : refuse("company-unknown", "company", {});
  },
});

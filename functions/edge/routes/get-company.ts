import { company } from "#core/wire/index.ts";
import { companyView } from "../company/view.ts";
import { anyRole, json, route } from "./route.ts";

export const getCompany = route({
  method: "GET",
  path: "/api/company",
  says: "The company's settings, tolerance sheets, kit cards and instruments as they are now",
  who: anyRole,
  gives: { 200: company },
  async run({ services, session }) {
    return json(await companyView(services, session.company));
  },
});

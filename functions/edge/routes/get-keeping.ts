import { keepingView } from "#core/wire/index.ts";
import { keepingOfCompany } from "../keeping/view.ts";
import { json, officeUp, route } from "./route.ts";

export const getKeeping = route({
  method: "GET",
  path: "/api/keeping",
  says: "How long each kind of thing is kept, when it ends site by site, and what goes next",
  who: officeUp,
  gives: { 200: keepingView },
  run: async ({ services, session }) => json(await keepingOfCompany(services, session.company)),
});

import { sites } from "#core/wire/index.ts";
import { json, officeUp, route } from "./route.ts";

export const listSites = route({
  method: "GET",
  path: "/api/sites",
  says: "The company's sites with their marks and their jobs",
  who: officeUp,
  gives: { 200: sites },
  async run({ services, session }) {
    const rows = await services.sites.all(session.company);
    return json({ sites: rows.map(({ id, number, content, jobs }) => ({ id, number, ...content, jobs })) });
  },
});

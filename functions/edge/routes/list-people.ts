import { people } from "#core/wire/index.ts";
import { anyRole, json, route } from "./route.ts";

export const listPeople = route({
  method: "GET",
  path: "/api/people",
  says: "The people of the company",
  who: anyRole,
  gives: { 200: people },
  async run({ services, session }) {
    const rows = await services.companies.people(session.company);
    return json({
      people: rows.map(({ id, name, role, left }) => ({ person: id, name, role, ...(left === undefined ? {} : { left }) })),
    });
  },
});

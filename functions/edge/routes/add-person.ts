import { refuse } from "#core/outcome/index.ts";
import { newPerson, personMade } from "#core/wire/index.ts";
import { newId } from "../chance.ts";
import { addPerson as add } from "../company/found.ts";
import { json, officeUp, route } from "./route.ts";

export const addPerson = route({
  method: "POST",
  path: "/api/people",
  says: "Adds a person; the office adds crew, the company owner anybody",
  who: officeUp,
  takes: newPerson,
  gives: { 201: personMade },
  async run({ services, session, input }) {
    if (session.role === "office" && input.role !== "crew") return refuse("role-not-allowed", "role", { role: session.role });
    const person = newId();
    const added = await add(services, session, { id: person, ...input });
    return added.ok ? json({ person }, 201) : added;
  },
});

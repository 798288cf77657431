import { refuse } from "#core/outcome/index.ts";
import { personAsked, personAsking } from "#core/wire/index.ts";
import { change } from "../company/change.ts";
import { personOf } from "../company/person.ts";
import { json, officeUp, route } from "./route.ts";

export const askForPerson = route({
  method: "POST",
  path: "/api/persons",
  says: "Enters that somebody asks what the company holds about him, or that it be removed, into the company's own ledger",
  who: officeUp,
  takes: personAsking,
  gives: { 201: personAsked },
  async run({ services, session, input }) {
    const { id, asks, names, contacts, person, day } = input;
    if (person !== undefined && !(await personOf(services, session.company, person))) return refuse("person-unknown", "person", {});
    const what = { asks, day, ...(person === undefined ? {} : { person }) };
    const who = { names, ...(contacts === undefined ? {} : { contacts }) };
    const number = await change(services, session, { id, kind: "person-asked", what, who }, () => []);
    return number.ok ? json({ request: id, number: number.value }, 201) : number;
  },
});

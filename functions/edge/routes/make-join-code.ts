import { refuse } from "#core/outcome/index.ts";
import { joinCodeAsked, joinCodeMade } from "#core/wire/index.ts";
import { counted, limits } from "../access/limits.ts";
import { codeEnds } from "../access/lives.ts";
import { personOf } from "../company/person.ts";
import { json, officeUp, route } from "./route.ts";

export const makeJoinCode = route({
  method: "POST",
  path: "/api/people/:person/codes",
  says: "A one-time code by which one of a crew takes a phone into use; digits and picture are told once",
  who: officeUp,
  takes: joinCodeAsked,
  gives: { 201: joinCodeMade },
  async run({ services, session, parameters, input, now }) {
    const person = await personOf(services, session.company, parameters.person);
    if (!person || person.left !== undefined) return refuse("person-unknown", "person", {});
    if (person.role !== "crew") return refuse("join-code-crew", "person", {});
    const may = await counted(services, limits.making, session.person);
    if (!may.ok) return may;
    const ends = codeEnds(now, input.days);
    const asked = { company: session.company, person: person.id, madeBy: session.person, made: now, ends };
    const { id, digits, token } = await services.joinCodes.make(asked);
    // after the number sign: what stands there is never sent to a server, and so stands in no log
    return json({ code: id, digits, picture: `/join#${token}`, ends }, 201);
  },
});

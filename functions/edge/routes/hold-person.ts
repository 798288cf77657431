import { refuse } from "#core/outcome/index.ts";
import { personHeld, personRequest } from "#core/wire/index.ts";
import { change } from "../company/change.ts";
import { requestNamed } from "../persons/asked.ts";
import { json, officeUp, route } from "./route.ts";

export const holdPerson = route({
  method: "POST",
  path: "/api/persons/:request/hold",
  says: "Holds a removal until the end of a day, because a warranty runs or there is a dispute; said again it takes the place of what was said before",
  who: officeUp,
  takes: personHeld,
  gives: { 201: personRequest },
  async run(call) {
    const { services, session, input } = call;
    const request = await requestNamed(call);
    if (!request.ok) return request;
    if (request.value.state === "answered") return refuse("person-request-answered", "request", {});
    const { because, until, note } = input;
    const what = { request: request.value.request, because, until, ...(note === undefined ? {} : { note }) };
    const told = await change(services, session, { kind: "person-held", what }, () => []);
    if (!told.ok) return told;
    const now = await requestNamed(call);
    return now.ok ? json(now.value, 201) : now;
  },
});

import { refuse } from "#core/outcome/index.ts";
import { mayEnd } from "../access/may-end.ts";
import { personOf } from "../company/person.ts";
import { anyRole, done, route } from "./route.ts";

export const endNamedSession = route({
  method: "POST",
  path: "/api/sessions/:session/end",
  says: "Signs a device out: one's own, one of the crew's by the office, anybody's by the company owner",
  who: anyRole,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const { company } = session;
    const named = parameters.session ?? "";
    const whose = await services.sessions.personOf(company, named, now);
    const person = whose === undefined ? undefined : await personOf(services, company, whose);
    // one that somebody may not end is as unknown to him as one that never was
    if (person === undefined || !mayEnd(session, person)) return refuse("session-unknown", "session", {});
    await services.sessions.endNamed(company, named, now);
    return done();
  },
});

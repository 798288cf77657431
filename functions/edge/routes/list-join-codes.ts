import { joinCodes } from "#core/wire/index.ts";
import { json, officeUp, route } from "./route.ts";

export const listJoinCodes = route({
  method: "GET",
  path: "/api/codes",
  says: "The codes given to crews and what became of them; the codes themselves are kept nowhere",
  who: officeUp,
  gives: { 200: joinCodes },
  async run({ services, session, now }) {
    const codes = await services.joinCodes.ofCompany(session.company);
    return json({
      codes: codes.map(({ id, person, made, ends, used, withdrawn }) => ({
        code: id,
        person,
        made,
        ends,
        is: used !== null ? "used" : withdrawn !== null ? "withdrawn" : ends <= now ? "over" : "open",
        ...(used === null ? {} : { used }),
      })),
    });
  },
});

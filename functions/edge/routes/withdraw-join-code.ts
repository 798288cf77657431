import { refuse } from "#core/outcome/index.ts";
import { done, officeUp, route } from "./route.ts";

export const withdrawJoinCode = route({
  method: "POST",
  path: "/api/codes/:code/withdraw",
  says: "Ends a code that still waits",
  who: officeUp,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const ended = await services.joinCodes.withdraw(session.company, parameters.code ?? "", now);
    return ended ? done() : refuse("join-code-unknown", "code", {});
  },
});

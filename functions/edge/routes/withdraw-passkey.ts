import { refuse } from "#core/outcome/index.ts";
import { sha256Hex } from "../chance.ts";
import { change } from "../company/change.ts";
import { done, officeUp, route } from "./route.ts";

export const withdrawPasskey = route({
  method: "POST",
  path: "/api/passkeys/:passkey/withdraw",
  says: "Removes a passkey and signs out what it signed in: one's own, or anybody's by the company owner",
  who: officeUp,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const { company, person, role } = session;
    const passkey = await services.passkeys.get(company, parameters.passkey ?? "");
    if (passkey === undefined || (passkey.person !== person && role !== "company owner")) return refuse("passkey-unknown", "passkey", {});
    // else one would be locked out by one's own hand
    if (passkey.person === person && (await services.passkeys.of(company, person)).length < 2) return refuse("passkey-last", "passkey", {});
    // the entry says who did it; of two who do it at once one entry is made
    const id = (await sha256Hex(`passkey-withdrawn ${company} ${passkey.id}`)).slice(0, 32);
    const what = { person: passkey.person, passkey: passkey.id };
    const told = await change(services, session, { id, kind: "passkey-withdrawn", what }, () => services.passkeys.withdrawal(passkey, now));
    return told.ok ? done() : told;
  },
});

import { refuse } from "#core/outcome/index.ts";
import { passkeyAsked } from "#core/wire/index.ts";
import { counted, limits } from "../access/limits.ts";
import { partyOf } from "../access/party.ts";
import { json, officeUp, route } from "./route.ts";

/** Of one person. */
export const MOST_PASSKEYS = 10;

export const askPasskey = route({
  method: "POST",
  path: "/api/passkeys/options",
  says: "What a browser is asked with to make a passkey; its challenge is this session's, for once and five minutes",
  who: officeUp,
  gives: { 200: passkeyAsked },
  async run({ services, session, now }) {
    const party = partyOf(services.environment);
    if (party === undefined) return refuse("passkeys-not-set", "origin", {});
    const may = await counted(services, limits.making, session.person);
    if (!may.ok) return may;
    const before = await services.passkeys.of(session.company, session.person);
    if (before.length >= MOST_PASSKEYS) return refuse("passkeys-many", "passkey", {});
    const challenge = await services.challenges.make(session.hash, "make", now);
    const { makingOptions } = await import("../access/webauthn.ts");
    return json({ origin: party.origin, options: await makingOptions(party, session, challenge, before) });
  },
});

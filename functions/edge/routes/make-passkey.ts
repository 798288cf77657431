import { refuse } from "#core/outcome/index.ts";
import { newPasskey, passkeyMade } from "#core/wire/index.ts";
import { partyOf } from "../access/party.ts";
import { newId } from "../chance.ts";
import { change } from "../company/change.ts";
import { MOST_PASSKEYS } from "./ask-passkey.ts";
import { json, officeUp, route } from "./route.ts";

export const makePasskey = route({
  method: "POST",
  path: "/api/passkeys",
  says: "Keeps a passkey that was made for the caller",
  who: officeUp,
  takes: newPasskey,
  gives: { 201: passkeyMade },
  async run({ services, session, input, now }) {
    const party = partyOf(services.environment);
    if (party === undefined) return refuse("passkeys-not-set", "origin", {});
    const challenge = await services.challenges.take(session.hash, "make", now);
    const { madeBy } = await import("../access/webauthn.ts");
    const made = challenge === undefined ? undefined : await madeBy(party, input.credential, challenge);
    if (made === undefined) return refuse("passkey-not-made", "credential", {});
    const { company, person } = session;
    if ((await services.passkeys.of(company, person)).length >= MOST_PASSKEYS) return refuse("passkeys-many", "passkey", {});
    const passkey = newId();
    const row = await services.passkeys.adding({ company, person, id: passkey, name: input.name, made: now, ...made });
    if (row === undefined) return refuse("passkey-there", "credential", {});
    const kept = await change(services, session, { kind: "passkey-made", what: { person, passkey } }, () => [row]);
    return kept.ok ? json({ passkey }, 201) : kept;
  },
});

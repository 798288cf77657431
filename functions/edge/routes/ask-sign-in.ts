import { ok, refuse } from "#core/outcome/index.ts";
import { passkeyAsked } from "#core/wire/index.ts";
import { addressOf } from "../access/address.ts";
import { counted, limits } from "../access/limits.ts";
import { CHALLENGE_LIFE_MS } from "../access/lives.ts";
import { partyOf } from "../access/party.ts";
import { newToken, sha256Hex } from "../chance.ts";
import { tryCookie } from "../cookie.ts";
import { everyone, route } from "./route.ts";

export const askSignIn = route({
  method: "POST",
  path: "/api/sign-in/options",
  says: "What a browser is asked with to sign in by a passkey; names nobody's, and its challenge is this browser's",
  who: everyone,
  gives: { 200: passkeyAsked },
  async run({ services, request, now }) {
    const party = partyOf(services.environment);
    if (party === undefined) return refuse("passkeys-not-set", "origin", {});
    const may = await counted(services, limits.challenges, addressOf(request));
    if (!may.ok) return may;
    const holder = newToken();
    const challenge = await services.challenges.make(await sha256Hex(holder), "sign in", now);
    const { signInOptions } = await import("../access/webauthn.ts");
    const body = { origin: party.origin, options: await signInOptions(party, challenge) };
    return ok(Response.json(body, { headers: { "set-cookie": tryCookie(holder, request, CHALLENGE_LIFE_MS) } }));
  },
});

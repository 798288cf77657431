import { ok, refuse } from "#core/outcome/index.ts";
import { passkeySignIn as shape } from "#core/wire/index.ts";
import { entered } from "../access/enter.ts";
import { counted, limits, notIn } from "../access/limits.ts";
import { partyOf } from "../access/party.ts";
import { newToken, sha256Hex } from "../chance.ts";
import { tryIn } from "../cookie.ts";
import { behind } from "../shards/index.ts";
import { everyone, route } from "./route.ts";

export const passkeySignIn = route({
  method: "POST",
  path: "/api/sign-in",
  says: "Signs in by a passkey; unknown, removed, too late and not rightly signed are answered alike",
  who: everyone,
  takes: shape,
  gives: { 204: "nothing" },
  async run({ services, request, input: { credential }, now }) {
    const party = partyOf(services.environment);
    if (party === undefined) return refuse("passkeys-not-set", "origin", {});
    const challenge = await services.challenges.take(await sha256Hex(tryIn(request) ?? ""), "sign in", now);
    const home = await behind(services, credential.id);
    const passkey = await home.passkeys.known(credential.id);
    const { signedBy } = await import("../access/webauthn.ts");
    // without a challenge the answer is verified against one that nobody was given: the same work
    const signed = await signedBy(party, passkey, credential, challenge ?? newToken());
    const isIn = passkey !== undefined && signed !== undefined && (await home.passkeys.used(passkey, signed.counter, signed.synced, now));
    if (!isIn) {
      // both are counted whatever they answer: the same work for everything that does not come in
      const account = await counted(services, limits.passkey, credential.id);
      const address = await notIn(services, limits.signIn, request, "sign-in-unknown", "credential");
      return account.ok ? address : account;
    }
    const { company, person, role, id } = passkey;
    const cookie = await entered(home, request, { company, person: { id: person, role }, way: "passkey", passkey: id }, now);
    return ok(new Response(null, { status: 204, headers: { "set-cookie": cookie } }));
  },
});

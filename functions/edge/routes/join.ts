import { type Outcome, ok } from "#core/outcome/index.ts";
import { type Joining, joining } from "#core/wire/index.ts";
import { addressOf } from "../access/address.ts";
import { entered } from "../access/enter.ts";
import { counted, limits, notIn } from "../access/limits.ts";
import { digitsHash } from "../adapters/join-codes.ts";
import { sha256Hex } from "../chance.ts";
import { personOf } from "../company/person.ts";
import type { Services } from "../services.ts";
import { behind } from "../shards/index.ts";
import { type Call, everyone, route } from "./route.ts";

type Joined = { readonly company: string; readonly person: string; readonly home: Services };

async function byToken({ services, now }: Call<Joining>, token: string): Promise<Outcome<Joined | undefined>> {
  const home = await behind(services, await sha256Hex(token));
  const joined = await home.joinCodes.useToken(token, now);
  return ok(joined && { ...joined, home });
}

/** Typed digits are few enough to be guessed at: each try is counted before it is looked at, and one that came in is given back. */
async function byDigits({ services, request, now }: Call<Joining>, typed: string): Promise<Outcome<Joined | undefined>> {
  const digits = typed.replaceAll(/[^0-9]/g, "");
  const address = addressOf(request);
  for (const [of, who] of [
    [limits.joining, address],
    [limits.allJoining, "everybody"],
  ] as const) {
    const may = await counted(services, of, who);
    if (!may.ok) return may;
  }
  const home = await behind(services, await digitsHash(services.environment.SERVICE_SECRET, digits));
  const joined = await home.joinCodes.useDigits(digits, now);
  if (joined !== undefined) {
    await services.tries.giveBack(limits.joining, address);
    await services.tries.giveBack(limits.allJoining, "everybody");
  }
  return ok(joined && { ...joined, home });
}

export const join = route({
  method: "POST",
  path: "/api/join",
  says: "Takes a crew's phone into use by a one-time code; unknown, used, withdrawn and run out are answered alike",
  who: everyone,
  takes: joining,
  gives: { 204: "nothing" },
  async run(call) {
    const { services, request, input, now } = call;
    const joined = "digits" in input ? await byDigits(call, input.digits) : await byToken(call, input.token);
    if (!joined.ok) return joined;
    const person = joined.value && (await personOf(joined.value.home, joined.value.company, joined.value.person));
    if (!joined.value || !person || person.left !== undefined) return notIn(services, limits.picture, request, "join-code-unknown", "code");
    const { company, home } = joined.value;
    const cookie = await entered(home, request, { company, person, way: "code" }, now);
    return ok(new Response(null, { status: 204, headers: { "set-cookie": cookie } }));
  },
});

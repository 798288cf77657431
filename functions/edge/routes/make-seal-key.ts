import { keyMade } from "#core/wire/index.ts";
import { newKey } from "../seals/index.ts";
import { json, ownerOnly, route } from "./route.ts";

export const makeSealKey = route({
  method: "POST",
  path: "/api/company/keys",
  says: "Makes a new key for the company's seals and retires the one in use; what it sealed stays verifiable",
  who: ownerOnly,
  gives: { 201: keyMade },
  async run({ services, session }) {
    const made = await newKey(services, session);
    return made.ok ? json({ key: made.value.kid, made: made.value.made }, 201) : made;
  },
});

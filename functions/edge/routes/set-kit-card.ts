import type { Json } from "#core/ledger/index.ts";
import { kitCard, versionMade } from "#core/wire/index.ts";
import { setVersion } from "../company/change.ts";
import { savedFrom } from "../company/saved-from.ts";
import { json, officeUp, route } from "./route.ts";

export const setKitCard = route({
  method: "POST",
  path: "/api/company/kit-cards",
  says: "Saves a kit card, the facts of one bought part from its own paper",
  who: officeUp,
  takes: kitCard,
  heads: { "if-match": "The digest of the version that this one was made from, in quotes; another that came meanwhile refuses it" },
  gives: { 201: versionMade },
  async run({ services, session, input, request }) {
    const content = input as unknown as Json;
    const set = await setVersion(services, session, { kind: "kit card", name: input.id, content, from: savedFrom(request) });
    return set.ok ? json(set.value, 201) : set;
  },
});

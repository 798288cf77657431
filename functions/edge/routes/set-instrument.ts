import type { Json } from "#core/ledger/index.ts";
import { instrument, versionMade } from "#core/wire/index.ts";
import { setVersion } from "../company/change.ts";
import { json, officeUp, route } from "./route.ts";

export const setInstrument = route({
  method: "POST",
  path: "/api/company/instruments",
  says: "Saves an instrument of the company",
  who: officeUp,
  takes: instrument,
  gives: { 201: versionMade },
  async run({ services, session, input }) {
    const set = await setVersion(services, session, { kind: "instrument", name: input.id, content: input as unknown as Json });
    return set.ok ? json(set.value, 201) : set;
  },
});

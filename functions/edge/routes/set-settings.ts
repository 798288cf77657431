import type { Json } from "#core/ledger/index.ts";
import { refuse } from "#core/outcome/index.ts";
import { settings, settingsSet } from "#core/wire/index.ts";
import { markKeys } from "#functions/shared/index.ts";
import { setVersion } from "../company/change.ts";
import { json, officeUp, route } from "./route.ts";

export const setSettings = route({
  method: "PUT",
  path: "/api/company/settings",
  says: "Sets the company's settings: name, zone, units, language, mark and colours, warranty terms",
  who: officeUp,
  takes: settings,
  gives: { 200: settingsSet },
  async run({ services, session, input }) {
    const { name, zone, units, language } = input;
    if (input.mark !== undefined) {
      const there = await services.store.head(markKeys(session.company, input.mark).paper);
      if (!there.ok) return there.refusal.code === "store-unavailable" ? there : refuse("mark-unknown", "settings/mark", {});
    }
    const row = services.companies.changeCompany({ id: session.company, name, zone, units, language });
    const content = input as unknown as Json;
    const set = await setVersion(services, session, { kind: "settings", name: "settings", content }, [row]);
    return set.ok ? json({ number: set.value.number, digest: set.value.digest }) : set;
  },
});

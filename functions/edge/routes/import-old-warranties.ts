import { warrantyImport, warrantyImported } from "#core/wire/index.ts";
import { importWarranties } from "../warranties/import.ts";
import { json, officeUp, route } from "./route.ts";

export const importOldWarranties = route({
  method: "POST",
  path: "/api/warranties/import",
  says: "Reads a CSV of old warranties; unless it is a dry run, takes over what is new or changed, all of it or nothing",
  who: officeUp,
  takes: warrantyImport,
  gives: { 200: warrantyImported },
  async run({ services, session, input }) {
    const imported = await importWarranties(services, session, input);
    return imported.ok ? json(imported.value) : imported;
  },
});

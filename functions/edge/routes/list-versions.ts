import { refuse } from "#core/outcome/index.ts";
import { versionList } from "#core/wire/index.ts";
import { companyPlace } from "../company/change.ts";
import { anyRole, json, type Route, route } from "./route.ts";

const versionsOf = (kind: "sheet" | "kit card", path: string, says: string): Route =>
  route({
    method: "GET",
    path,
    says,
    who: anyRole,
    gives: { 200: versionList },
    async run({ services, session: { company }, parameters }) {
      const name = parameters.name ?? "";
      const versions = await services.companies.versionsOf(company, companyPlace(company).job, kind, name);
      return versions.length === 0 ? refuse("version-unknown", "name", {}) : json({ name, versions });
    },
  });

/** The versions of one tolerance sheet, and those of one kit card. */
export const versionLists: readonly Route[] = [
  versionsOf("sheet", "/api/company/sheets/:name", "Every version of a tolerance sheet, newest first"),
  versionsOf("kit card", "/api/company/kit-cards/:name", "Every version of a kit card, newest first"),
];

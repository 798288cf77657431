import type { Json } from "#core/ledger/index.ts";
import type { Services } from "../services.ts";

/** The company's terms as they are in its settings now; undefined where it has set none. */
export async function termsSaid(services: Services, company: string): Promise<Json | undefined> {
  const settings = await services.companies.settings(company);
  return typeof settings === "object" && settings !== null && "warranty" in settings ? settings.warranty : undefined;
}

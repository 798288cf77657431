import { type Outcome, ok } from "#core/outcome/index.ts";
import type { Services } from "../services.ts";
import { type Author, change } from "./change.ts";
import { pathOf } from "./found.ts";

/**
 * A new way in for a person whose passkeys are lost: the entry, the end of every old way and the new link, all or none. `by`: at
 * whose word; the operator is no person of the company, so that the entry is then in the name of the owner who asked.
 */
export async function recover(
  services: Services,
  author: Author,
  person: string,
  now: number,
  by: "company owner" | "operator" = "company owner",
): Promise<Outcome<string>> {
  const { company } = author;
  const link = await services.links.draw(company, person, now);
  const changed = await change(services, author, { kind: "way-in-renewed", what: { person, by } }, () => [
    ...services.sessions.withdrawal(company, person, now),
    services.passkeys.withdrawalOf(company, person, now),
    link.made,
  ]);
  return changed.ok ? ok(pathOf(link.token)) : changed;
}

import type { Json } from "#core/ledger/index.ts";
import { defaultSheetJson, oldPondSheetJson } from "../sheets/index.ts";
import { Client } from "./client.ts";
import { company, kitCards, people, settings } from "./company.ts";
import { markSvg } from "./mark.ts";

export interface Version {
  readonly thing: "sheet" | "kit card" | "settings";
  readonly name: string;
  readonly number: number;
  readonly digest: string;
  readonly content: Json;
}

export interface Crew {
  readonly person: string;
  readonly client: Client;
}

export interface Founded {
  readonly owner: Client;
  readonly office: Crew;
  readonly first: Crew;
  readonly second: Crew;
}

/** The company, its people, and a device of each signed in by a link of its own. An id: for one beside the demo's own. */
export async function found(edge: string, operatorKey: string, id: string = company.id): Promise<Founded> {
  const operator = { authorization: `Operator ${operatorKey}` };
  const { ownerLink } = await new Client(edge).send<{ ownerLink: string }>(
    "POST",
    "/api/companies",
    { ...company, id, owner: { name: people.owner.name } },
    operator,
  );
  const owner = await new Client(edge).signIn(ownerLink);
  const joined = async (who: { readonly name: string; readonly role: string }): Promise<Crew> => {
    const { person } = await owner.send<{ person: string }>("POST", "/api/people", who);
    const { link } = await owner.send<{ link: string }>("POST", `/api/people/${person}/links`);
    return { person, client: await new Client(edge).signIn(link) };
  };
  return { owner, office: await joined(people.office), first: await joined(people.first), second: await joined(people.second) };
}

/** The company's settings, its tolerance sheets and its kit cards, as versions that jobs take over. */
export async function keep({ owner, office }: Founded): Promise<readonly Version[]> {
  const { mark } = await owner.putFile<{ mark: string }>("/api/company/mark", new TextEncoder().encode(markSvg), "image/svg+xml");
  const withMark = { ...(settings as { readonly [name: string]: Json }), mark };
  const set = await owner.send<{ number: number; digest: string }>("PUT", "/api/company/settings", withMark);
  const sheets: Version[] = [];
  for (const content of [defaultSheetJson, oldPondSheetJson]) {
    const made = await office.client.send<{ name: string; number: number; digest: string }>("POST", "/api/company/sheets", content);
    sheets.push({ thing: "sheet", ...made, content });
  }
  const cards: Version[] = [];
  for (const card of kitCards) {
    const made = await office.client.send<{ name: string; number: number; digest: string }>("POST", "/api/company/kit-cards", card);
    cards.push({ thing: "kit card", ...made, content: card as unknown as Json });
  }
  return [{ thing: "settings", name: "settings", ...set, content: withMark }, ...sheets, ...cards];
}

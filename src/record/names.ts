import type { Live, Role } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import type { Sayer } from "./say.ts";

export interface Person {
  readonly name: string;
  readonly role: Role;
}

export type NameStyle = "in full" | "role and initials";

const initials = (name: string): string =>
  name
    .split(/\s+/)
    .filter((word) => word.length > 0)
    .map((word) => `${[...word][0]?.toUpperCase() ?? ""}.`)
    .join(" ");

/** A name as the edition prints it: in full, or 'office, M. T.'. */
export function printedName(name: string, role: string, style: NameStyle): string {
  if (name.trim() === "") return role;
  return style === "in full" ? name : `${role}, ${initials(name)}`;
}

const isFields = (value: Json | undefined): value is { readonly [key: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The name typed with a fact, or that of the person who entered it, as the edition prints it. */
export function nameBehind(fact: Live, people: Readonly<Record<string, Person>>, sayer: Sayer, style: NameStyle): string {
  const author = people[fact.entry.author.person];
  const who = fact.entry.who;
  const typed = isFields(who) && typeof who.name === "string" ? who.name : undefined;
  const role = typeof fact.what.role === "string" ? (fact.what.role as Role) : author?.role;
  const roleText = sayer.role(role ?? (author ? author.role : "someone"));
  return printedName(typed ?? author?.name ?? "", roleText, style);
}

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
  return style === "in full" ? name : [role, initials(name)].filter((part) => part !== "").join(", ");
}

const isFields = (value: Json | undefined): value is { readonly [key: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The role typed beside a name; who signs has the relation that was typed. */
function typedRole(fact: Live, role: Json | undefined): string | undefined {
  if (typeof role === "string") return role;
  return fact.kind === "signed" && typeof fact.what.relation === "string" ? fact.what.relation : undefined;
}

/** What was typed as the name of a fact; undefined where none was. */
function typedWho({ entry: { who } }: Live): { readonly name: string; readonly role?: Json } | undefined {
  if (!isFields(who) || typeof who.name !== "string" || who.name.trim() === "") return undefined;
  return { name: who.name, ...(who.role === undefined ? {} : { role: who.role }) };
}

const roles: readonly Json[] = ["crew", "office", "company owner"] satisfies readonly Role[];
/** A ledger that came from elsewhere may say anything. */
const isRole = (value: Json | undefined): value is Role => value !== undefined && roles.includes(value);

/** Naming of the people of a job, as one edition prints them. */
export interface Naming {
  readonly people: Readonly<Record<string, Person>>;
  readonly style: NameStyle;
  readonly role: Sayer["role"];
}

/**
 * The name typed with a fact, or that of the person who entered it, as the edition prints it. A typed name goes with the
 * role typed beside it; a go-ahead names whose word it was, who need not be the one who entered it.
 */
export function nameBehind(fact: Live, { people, style, role }: Naming): string {
  const author = people[fact.entry.author.person];
  const typed = typedWho(fact);
  const entered = isRole(fact.what.role) ? fact.what.role : author?.role;
  if (typed === undefined) return printedName(author?.name ?? "", role(entered ?? "someone"), style);
  return printedName(typed.name, typedRole(fact, typed.role) ?? role(fact.kind === "go-ahead" ? "office" : (entered ?? "someone")), style);
}

/** The name typed with a fact alone: of one who entered it for another it says nothing. */
export function nameTypedWith(fact: Live, { people, style, role }: Naming): string | undefined {
  const typed = typedWho(fact);
  if (typed === undefined) return undefined;
  const known = Object.values(people).find(({ name }) => name === typed.name)?.role;
  return printedName(typed.name, typedRole(fact, typed.role) ?? (known === undefined ? "" : role(known)), style);
}

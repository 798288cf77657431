import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type Body, type Ledger, type LedgerEntry, type Part, type PartName, partNames, type Withheld } from "./envelope.ts";

/**
 * Why a part is not there: left out of an edition, erased on request, or filed under the wrong job. Closed, because the
 * reason stands outside every hash: a text that is none of these cannot have been written by the program.
 */
export const withheldReasons = ["edition", "erasure", "wrong-job"] as const;
export type WithheldReason = (typeof withheldReasons)[number];

export const isWithheldReason = (text: string): text is WithheldReason => (withheldReasons as readonly string[]).includes(text);

export const isWithheld = (part: Part | Withheld): part is Withheld => "withheld" in part;

/**
 * The entry with these parts of its body taken out, reason in their place; its envelope, and so the chain, is untouched.
 * A part that is not there is passed over, one withheld before keeps its first reason. Refuses `ledger-withheld-reason`.
 */
export function withhold(entry: LedgerEntry, parts: readonly PartName[], reason: WithheldReason): Outcome<LedgerEntry> {
  if (!isWithheldReason(reason)) return refuse("ledger-withheld-reason", "reason");
  const body: { [P in PartName]?: Part | Withheld } = {};
  for (const name of partNames) {
    const part = entry.body[name];
    if (part === undefined) continue;
    body[name] = parts.includes(name) && !isWithheld(part) ? { withheld: reason } : part;
  }
  return ok({ envelope: entry.envelope, body });
}

/** The kinds whose whole body the customer does not get; of every other entry only names and positions are withheld. */
export interface EditionRule {
  readonly wholeBodies: readonly string[];
}

/** The ledger as the customer gets it: still every entry, still the same chain and head. */
export function customerEdition(ledger: Ledger, rule: EditionRule): Ledger {
  const entries = ledger.entries.map((entry): LedgerEntry => {
    const parts: readonly PartName[] = rule.wholeBodies.includes(entry.envelope.kind) ? partNames : ["who", "where"];
    const edited = withhold(entry, parts, "edition");
    if (!edited.ok) throw new Error("customerEdition: its own reason was refused");
    return edited.value;
  });
  return { ...ledger, entries };
}

export interface WithheldPart {
  readonly number: number;
  readonly part: PartName;
  readonly reason: string;
}

/** What a body withholds, in the order what, who, where. */
export function withheldParts(number: number, body: Body): WithheldPart[] {
  return partNames.flatMap((part) => {
    const there = body[part];
    return there !== undefined && isWithheld(there) ? [{ number, part, reason: there.withheld }] : [];
  });
}

import type { EntryMade } from "../../../wire/index.ts";
import { type Answer, tell } from "../../parts/edge.ts";
import type { Keep } from "../keep/index.ts";

/** A fact of the company itself on its way: kept on this phone until the edge has it. */
export interface PendingFact {
  readonly id: string;
  readonly kind: "tape-studied" | "instrument-checked";
  readonly what: unknown;
}

const PLACE = "company-facts";

export const pendingOf = async (keep: Keep): Promise<readonly PendingFact[]> => (await keep.draft<readonly PendingFact[]>(PLACE)) ?? [];

/** 128 bits of chance, so that sent twice it is one entry. */
export const newFactId = (): string => crypto.randomUUID().replaceAll("-", "");

/** Kept first, then sent: what is typed is never lost to a missing signal. */
export async function keepFact(keep: Keep, fact: PendingFact): Promise<void> {
  await keep.keepDraft(PLACE, [...(await pendingOf(keep)), fact]);
}

/** Sends whatever waits, the oldest first; answers how the last one went and how many wait still. */
export async function sendFacts(keep: Keep): Promise<{ readonly last: Answer<EntryMade> | undefined; readonly waiting: number }> {
  let last: Answer<EntryMade> | undefined;
  for (const fact of await pendingOf(keep)) {
    last = await tell<EntryMade>("/api/company/facts", fact);
    if (last.is !== "given") break;
    const rest = (await pendingOf(keep)).filter(({ id }) => id !== fact.id);
    await keep.keepDraft(PLACE, rest.length === 0 ? undefined : rest);
  }
  return { last, waiting: (await pendingOf(keep)).length };
}

/** Lets go of what the office refused, once somebody has read why. */
export async function dropFirst(keep: Keep): Promise<void> {
  const rest = (await pendingOf(keep)).slice(1);
  await keep.keepDraft(PLACE, rest.length === 0 ? undefined : rest);
}

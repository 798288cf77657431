import { type Outcome, refuse } from "../../outcome/index.ts";
import { type KeyList, readKeyList } from "../../proof/index.ts";
import { ask } from "../parts/edge.ts";

const KEPT = "key-lists";

function keptValues(): readonly unknown[] {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "[]");
    return Array.isArray(value) ? value : [];
  } catch {
    // nothing is kept here, or nothing that can be read
    return [];
  }
}

/** Lists of keys that this device has. */
export const keptLists = (): readonly KeyList[] =>
  keptValues().flatMap((value) => {
    const list = readKeyList(value);
    return list.ok ? [list.value] : [];
  });

/** Keeps a list in the place of the company's last one. Refuses `key-list-shape`. */
export function keepList(value: unknown): Outcome<KeyList> {
  const list = readKeyList(value);
  if (!list.ok) return list;
  const others = keptValues().filter((one) => (one as { company?: unknown } | null)?.company !== list.value.company);
  try {
    localStorage.setItem(KEPT, JSON.stringify([...others, value]));
  } catch {
    // good for this page alone
  }
  return list;
}

/** A list out of a file that was handed over. */
export async function keepListIn(file: Blob): Promise<Outcome<KeyList>> {
  try {
    return keepList(JSON.parse(await file.text()));
  } catch {
    return refuse("key-list-shape", "file", {});
  }
}

/** The list that a company publishes, kept for when there is no signal. */
export async function fetchList(company: string): Promise<void> {
  const answer = await ask<unknown>(`/api/companies/${company}/keys`);
  if (answer.is === "given") keepList(answer.value);
}

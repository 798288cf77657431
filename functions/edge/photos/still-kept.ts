import { type Outcome, ok } from "#core/outcome/index.ts";
import type { Services } from "../services.ts";

/**
 * Whether the store still has what a row says was stored. Whoever sends the bytes again and is told that they are there lets go
 * of them, so that is asked of the store and not of the row. Refuses store-unavailable.
 */
export async function stillKept({ store }: Services, key: string, bytes: number): Promise<Outcome<boolean>> {
  const kept = await store.head(key);
  if (kept.ok) return ok(kept.value.length === bytes);
  return kept.refusal.code === "store-unavailable" ? kept : ok(false);
}

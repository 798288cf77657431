import type { Json } from "../ledger/index.ts";
import type { Entry, Whats } from "./fact.ts";

export type What = { readonly [key: string]: Json };

/** All that was corrected in one entry, the last word on each of its fields. */
export interface Corrections {
  readonly replace: What;
  readonly withdrawn: boolean;
  /** Id of the last correction. */
  readonly by: string;
}

/**
 * The corrections of an entry, given all `corrected` entries in the order of the work. One that names an earlier
 * correction goes on correcting what that one corrected; one that withdraws a correction leaves the entry as it was.
 */
export function correctionsOf(corrected: readonly Entry[]): (id: string) => Corrections | undefined {
  const byTarget = new Map<string, { readonly id: string; readonly what: Whats["corrected"] }[]>();
  for (const { id, what } of corrected) {
    const correction = { id, what: what as unknown as Whats["corrected"] };
    const known = byTarget.get(correction.what.entry.id);
    if (known) known.push(correction);
    else byTarget.set(correction.what.entry.id, [correction]);
  }
  const resolve = (target: string, above: ReadonlySet<string>): Corrections | undefined => {
    let result: Corrections | undefined;
    for (const { id, what } of byTarget.get(target) ?? []) {
      if (above.has(id)) continue;
      const later = resolve(id, new Set([...above, id]));
      if (later?.withdrawn) continue;
      const replace = { ...result?.replace, ...what.replace, ...later?.replace };
      result = { replace, withdrawn: what.withdrawn === true, by: later?.by ?? id };
    }
    return result;
  };
  return (id) => (byTarget.has(id) ? resolve(id, new Set([id])) : undefined);
}

import type { SessionTyped } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";

/** A glue session as it is meant to be, before anybody names it. */
export interface Meant {
  readonly kind?: "rigid PVC" | "flexible PVC";
  readonly humidity?: "dry" | "humid";
  /** As typed. */
  readonly coldest: string;
  readonly can: string;
}

/** What the core is asked of it; undefined until something is said that a time can be taken from. */
export function sessionOf({ kind, humidity, coldest, can }: Meant, units: "inch" | "metric"): SessionTyped | undefined {
  if (coldest.trim() === "" && can.trim() === "") return undefined;
  const time = readQuantity(can, { kind: "duration", unit: "h" });
  return {
    ...(kind === undefined ? {} : { kind }),
    ...(humidity === undefined ? {} : { humidity }),
    ...(coldest.trim() === "" ? {} : { coldest: { typed: coldest.trim(), unit: units === "inch" ? "°F" : "°C" } }),
    // until water is all that is asked here: the set time plays no part in it
    ...(time.ok ? { can: { set: time.value.value, cure: time.value.value } } : {}),
  };
}

import type { About } from "../../../job/index.ts";

/** What an address names: an item or a check, for a tag. */
export function aboutOfAddress(thing = "", tag = "-"): About {
  const [kind, ...rest] = thing.split(":");
  const id = rest.join(":");
  return { ...(kind === "check" ? { check: id } : { item: id }), ...(tag === "-" ? {} : { tag }) };
}

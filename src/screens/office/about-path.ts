import type { About } from "../../job/index.ts";

/** What a decision is about, as pieces of a path: whether it is a check or an item, its id, and its tag where it has one. */
export const aboutPath = ({ item, check, tag }: About): readonly string[] => [
  check === undefined ? "item" : "check",
  check ?? item ?? "",
  ...(tag === undefined ? [] : [tag]),
];

/** The same read back; undefined for a path that names nothing. */
export function aboutIn([of, id, tag]: readonly string[]): About | undefined {
  if ((of !== "item" && of !== "check") || id === undefined) return undefined;
  return { [of]: id, ...(tag === undefined ? {} : { tag }) };
}

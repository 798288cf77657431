import type { Json } from "../../ledger/index.ts";

/** One leaf of a thing: its path from the thing, such as `title/en`, and what stands there. */
export interface Leaf {
  readonly path: string;
  readonly value: Json;
}

/** What stands otherwise at one path; `undefined`: nothing stands there. */
export interface LeafChange {
  readonly path: string;
  readonly before?: Json;
  readonly after?: Json;
}

type Fields = { readonly [name: string]: Json };

const isFields = (value: Json | undefined): value is Fields => typeof value === "object" && value !== null && !Array.isArray(value);

/** Inside a thing: a limit by a named function is one thing: half of it says nothing. So is a figure with its unit. */
const isWhole = (value: Fields): boolean => "function" in value || "typed" in value;

const idOf = (value: Json): string | undefined => (isFields(value) && typeof value.id === "string" ? value.id : undefined);

/** Every leaf of a thing in its own order. What a list holds goes by its id where it has one, else by its place. */
export function leavesOf(value: Json, path = ""): readonly Leaf[] {
  const at = (name: string | number): string => (path === "" ? String(name) : `${path}/${name}`);
  if (Array.isArray(value)) {
    const list = value as readonly Json[];
    if (list.every((each) => !isFields(each))) return [{ path, value }];
    return list.flatMap((each, i) => leavesOf(each, at(idOf(each) ?? i)));
  }
  if (!isFields(value) || (path !== "" && isWhole(value))) return [{ path, value }];
  return Object.entries(value).flatMap(([name, inner]) => leavesOf(inner, at(name)));
}

const same = (one: Json | undefined, other: Json | undefined): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What stands otherwise in the later of two things, leaf by leaf: the later one's order, then what is gone. */
export function leafChanges(before: Json, after: Json): readonly LeafChange[] {
  const byPath = (thing: Json): ReadonlyMap<string, Json> => new Map(leavesOf(thing).map(({ path, value }) => [path, value]));
  const [was, is] = [byPath(before), byPath(after)];
  const changed = [...is].flatMap(([path, value]): readonly LeafChange[] => {
    const earlier = was.get(path);
    if (same(earlier, value)) return [];
    return [{ path, ...(earlier === undefined ? {} : { before: earlier }), after: value }];
  });
  const gone = [...was].flatMap(([path, value]): readonly LeafChange[] => (is.has(path) ? [] : [{ path, before: value }]));
  return [...changed, ...gone];
}

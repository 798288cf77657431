export type Likeness = "same" | "one unit" | "other";

const worse = (a: Likeness, b: Likeness): Likeness => (a === "other" || b === "other" ? "other" : a === "same" ? b : a);

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null;

/** Names of what is there: a field that is undefined is none, as in JSON. */
const fieldsOf = (value: Readonly<Record<string, unknown>>): readonly string[] =>
  Object.keys(value).filter((key) => value[key] !== undefined);

/**
 * How alike two JSON values are. `one unit`: they differ by numbers alone, none by more than 1, the unit of what is stored;
 * another engine's mathematics may do that where a check needs more than + − × ÷ and the square root.
 */
export function likeness(a: unknown, b: unknown): Likeness {
  if (a === b) return "same";
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= 1 ? "one unit" : "other";
  if (!isObject(a) || !isObject(b) || Array.isArray(a) !== Array.isArray(b)) return "other";
  const [keys, others] = [fieldsOf(a), fieldsOf(b)];
  if (keys.length !== others.length) return "other";
  return keys.reduce<Likeness>(
    (so, key) => (so === "other" ? so : worse(so, Object.hasOwn(b, key) ? likeness(a[key], b[key]) : "other")),
    "same",
  );
}

import { type Refusal, refuse } from "../outcome/index.ts";

/** The faults of a value's shape: none, or each with its place. Untrusted input; nothing here throws. */
export type Shape = (value: unknown, place: string) => readonly Refusal[];

const fault = (place: string, wanted: string): readonly Refusal[] => [refuse("sheet-shape", place, { wanted }).refusal];

export const text: Shape = (value, place) =>
  typeof value === "string" && value.length > 0 && value.length <= 2000 ? [] : fault(place, "text");
export const anyText: Shape = (value, place) => (typeof value === "string" ? [] : fault(place, "text"));
export const finite: Shape = (value, place) => (Number.isFinite(value) ? [] : fault(place, "a number"));
export const integer: Shape = (value, place) => (Number.isSafeInteger(value) ? [] : fault(place, "a whole number"));
export const notNegative: Shape = (value, place) =>
  Number.isSafeInteger(value) && (value as number) >= 0 ? [] : fault(place, "a whole number from 0");
export const yesNo: Shape = (value, place) => (typeof value === "boolean" ? [] : fault(place, "true or false"));

export const among =
  (...allowed: readonly (string | number)[]): Shape =>
  (value, place) =>
    allowed.includes(value as string) ? [] : fault(place, allowed.join(", "));

export const listOf =
  (shape: Shape): Shape =>
  (value, place) =>
    Array.isArray(value) ? value.flatMap((entry, i) => shape(entry, `${place}/${i}`)) : fault(place, "a list");

/** A list of just so many, each of its own shape. */
export const eachOf =
  (...shapes: readonly Shape[]): Shape =>
  (value, place) =>
    Array.isArray(value) && value.length === shapes.length
      ? shapes.flatMap((shape, i) => shape(value[i], `${place}/${i}`))
      : fault(place, `a list of ${shapes.length}`);

export const eitherOf =
  (...shapes: readonly Shape[]): Shape =>
  (value, place) =>
    shapes.some((shape) => shape(value, place).length === 0) ? [] : fault(place, "one of the shapes that this can have");

/** An object whose every field, whatever its name, has this shape. */
export const recordOf =
  (shape: Shape): Shape =>
  (value, place) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.entries(value).flatMap(([name, inner]) => shape(inner, `${place}/${name}`))
      : fault(place, "an object");

interface Fields {
  readonly [name: string]: Shape;
}

/** An object with these fields, those whose name ends in `?` optional. Other fields: a fault, unless they are `kept`. */
export function objectOf(fields: Fields, others: "refused" | "kept" = "refused"): Shape {
  const read = () =>
    new Map(Object.entries(fields).map(([name, shape]) => [name.replace("?", ""), { shape, optional: name.endsWith("?") }] as const));
  // when something is first judged by it: most starts of a worker judge no sheet
  let known: ReturnType<typeof read> | undefined;
  return (value, place) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return fault(place, "an object");
    known ??= read();
    const optional = known;
    const given = value as Readonly<Record<string, unknown>>;
    const faults: Refusal[] = [];
    // one by one: a list of hundreds of thousands may be all wrong, which is too many for the arguments of one call
    const add = (more: readonly Refusal[]): void => {
      for (const one of more) faults.push(one);
    };
    if (others === "refused") {
      for (const name of Object.keys(given))
        if (!optional.has(name)) add(fault(`${place}/${name}`, "nothing: this name is not known here"));
    }
    for (const [name, field] of optional) {
      const inner = Object.hasOwn(given, name) ? given[name] : undefined;
      if (inner !== undefined) add(field.shape(inner, `${place}/${name}`));
      else if (!field.optional) add(fault(`${place}/${name}`, "something"));
    }
    return faults;
  };
}

import { type Refusal, refuse } from "../outcome/index.ts";
import { isHex64, isWellFormed } from "./bytes.ts";
import { canonicalFault } from "./canonical.ts";

/** Appends to `faults` what is wrong with the value's shape. Takes any value, never throws. */
type Shape = (value: unknown, place: string, faults: Refusal[]) => void;

const under = (place: string, key: string | number): string => (place === "" ? String(key) : `${place}/${key}`);

const simple =
  (good: (value: unknown) => boolean): Shape =>
  (value, place, faults) => {
    if (!good(value)) faults.push(refuse("ledger-shape", place).refusal);
  };

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null && !Array.isArray(value);

const text: Shape = (value, place, faults) => {
  if (typeof value !== "string" || value === "") faults.push(refuse("ledger-shape", place).refusal);
  else if (!isWellFormed(value)) faults.push(refuse("ledger-text-surrogate", place).refusal);
};
const integer = simple(Number.isSafeInteger);
const count = simple((value) => Number.isSafeInteger(value) && (value as number) >= 0);
const hex = simple(isHex64);

const content: Shape = (value, place, faults) => {
  const fault = canonicalFault(value, place);
  if (fault) faults.push(fault);
};

const list =
  (item: Shape): Shape =>
  (value, place, faults) => {
    if (!Array.isArray(value)) faults.push(refuse("ledger-shape", place).refusal);
    else for (let i = 0; i < value.length; i += 1) item(value[i], under(place, i), faults);
  };

/** Exactly these fields: one that is not named would be in nobody's hash. */
const fields = (needed: Readonly<Record<string, Shape>>, optional: Readonly<Record<string, Shape>> = {}): Shape => {
  // listed once: a ledger has thousands of objects
  const [must, may] = [Object.entries(needed), Object.entries(optional)];
  const isNamed = (key: string): boolean => Object.hasOwn(needed, key) || Object.hasOwn(optional, key);
  return (value, place, faults) => {
    if (!isObject(value)) {
      faults.push(refuse("ledger-shape", place).refusal);
      return;
    }
    for (const [name, shape] of must) {
      if (Object.hasOwn(value, name)) shape(value[name], under(place, name), faults);
      else faults.push(refuse("ledger-shape", under(place, name)).refusal);
    }
    for (const [name, shape] of may) {
      if (Object.hasOwn(value, name)) shape(value[name], under(place, name), faults);
    }
    if (!Object.keys(value).every(isNamed)) faults.push(refuse("ledger-shape", place).refusal);
  };
};

const kept = fields({ salt: hex, content });
// Any text: whether it is one of the reasons is a check of its own.
const withheld = fields({ withheld: simple((value) => typeof value === "string") });
const part: Shape = (value, place, faults) => (isObject(value) && Object.hasOwn(value, "withheld") ? withheld : kept)(value, place, faults);

const sealedFields = {
  format: integer,
  job: text,
  id: text,
  kind: text,
  author: fields({ person: text, phone: text }),
  run: count,
  made: integer,
  parts: fields({}, { what: hex, who: hex, where: hex }),
};

export const sealedShape = fields(sealedFields);
export const envelopeShape = fields({ ...sealedFields, number: integer, sent: integer, received: integer, before: hex });
export const bodyShape = fields({}, { what: part, who: part, where: part });
export const ledgerShape = fields({
  format: integer,
  job: text,
  head: fields({ number: integer, hash: hex }),
  entries: list(fields({ envelope: envelopeShape, body: bodyShape })),
  versions: list(fields({ kind: text, digest: hex, content })),
});

/** All faults of a value's shape, with their places under `place`. */
export function shapeFaults(shape: Shape, value: unknown, place = ""): Refusal[] {
  const faults: Refusal[] = [];
  shape(value, place, faults);
  return faults;
}

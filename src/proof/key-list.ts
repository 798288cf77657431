import { type Outcome, ok, refuse } from "../outcome/index.ts";

/** One public key of a company (RFC 8037: kty OKP, crv Ed25519). */
export interface SealKey {
  /** 32 bytes, base64url. */
  readonly x: string;
  /** From then on it signed no more, ms since 1970 UTC. */
  readonly retired?: number;
}

/** A company's public keys as it publishes them. */
export interface KeyList {
  readonly company: string;
  readonly name: string;
  readonly keys: readonly SealKey[];
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isKeyText = (value: unknown): value is string => typeof value === "string" && /^[A-Za-z0-9_-]{43}$/.test(value);

/**
 * Reads a JWK set (RFC 7517) that says whose it is in the members `company` and `name`. Keys of other kinds are passed over.
 * Takes any value; refuses `key-list-shape`.
 */
export function readKeyList(input: unknown): Outcome<KeyList> {
  if (!isObject(input) || !Array.isArray(input.keys)) return refuse("key-list-shape", "keys");
  const { company, name } = input;
  if (typeof company !== "string" || typeof name !== "string" || company === "" || name === "") return refuse("key-list-shape", "company");
  const keys = input.keys.flatMap((key: unknown): SealKey[] => {
    if (!isObject(key) || key.kty !== "OKP" || key.crv !== "Ed25519" || !isKeyText(key.x)) return [];
    return [{ x: key.x, ...(Number.isSafeInteger(key.retired) ? { retired: key.retired as number } : {}) }];
  });
  return keys.length === 0 ? refuse("key-list-shape", "keys") : ok({ company, name, keys });
}

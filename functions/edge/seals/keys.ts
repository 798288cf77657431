import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { KeySet } from "#core/wire/index.ts";
import type { CompanyRow } from "../adapters/companies.ts";
import type { SealKeyRow } from "../adapters/seal-keys.ts";
import { type Author, change } from "../company/change.ts";
import type { Services } from "../services.ts";
import { makeKey, unwrapKey } from "./wrapping.ts";

/** The secret that wraps keys. Refuses `seal-key-missing` where the environment has none. */
export function secretOf({ environment }: Services): Outcome<string> {
  const { SEAL_SECRET: secret } = environment;
  return secret === undefined || secret === "" ? refuse("seal-key-missing", "SEAL_SECRET", {}) : ok(secret);
}

/** Makes a key for the company, told in its ledger; the one in use until now is retired by it. */
export async function newKey(services: Services, author: Author): Promise<Outcome<SealKeyRow>> {
  const secret = secretOf(services);
  if (!secret.ok) return secret;
  const { company } = author;
  const before = await services.sealKeys.inUse(company);
  const made = await makeKey(secret.value, company);
  const at = services.clock();
  const what = { key: made.kid, x: made.x, ...(before ? { instead: before.kid } : {}) };
  const told = await change(services, author, { kind: "seal-key-made", what }, () => [
    ...(before ? [services.sealKeys.retire(company, at)] : []),
    services.sealKeys.add(company, { ...made, made: at }),
  ]);
  return told.ok ? ok({ ...made, made: at, retired: null }) : told;
}

export interface SigningKey {
  readonly kid: string;
  readonly x: string;
  readonly signs: CryptoKey;
}

/** The key that seals the company's records now, made when there is none yet. Refuses `seal-key-missing`, `seal-key-unreadable`. */
export async function signingKey(services: Services, author: Author): Promise<Outcome<SigningKey>> {
  const secret = secretOf(services);
  if (!secret.ok) return secret;
  const { company } = author;
  let row = await services.sealKeys.inUse(company);
  if (row === undefined) {
    const made = await services.lanes.in(`seal key ${company}`, 10_000, async () => {
      const other = await services.sealKeys.inUse(company);
      return other ? ok(other) : newKey(services, author);
    });
    // an edge on another machine may have been first
    row = made.ok ? made.value : await services.sealKeys.inUse(company);
    if (row === undefined && !made.ok) return made;
  }
  if (row === undefined) return refuse("database-busy", "key", {});
  const signs = await unwrapKey(secret.value, company, row);
  return signs.ok ? ok({ kid: row.kid, x: row.x, signs: signs.value }) : signs;
}

/** The public halves as a JWK set (RFC 7517, RFC 8037) that says whose they are. */
export async function keySet(services: Services, { id, name }: CompanyRow): Promise<KeySet> {
  const keys = (await services.sealKeys.all(id)).map(({ kid, x, made, retired }) => ({
    kty: "OKP" as const,
    crv: "Ed25519" as const,
    x,
    kid,
    alg: "EdDSA" as const,
    use: "sig" as const,
    made,
    ...(retired === null ? {} : { retired }),
  }));
  return { company: id, name, keys };
}

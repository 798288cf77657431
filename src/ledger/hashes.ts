import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { fromHex, isHex64 } from "./bytes.ts";
import { canonicalFault, canonicalText } from "./canonical.ts";
import type { Digest, Envelope, Head, Json, Part, Sealed } from "./envelope.ts";
import { envelopeShape, sealedShape, shapeFaults } from "./shape.ts";

/** SHA-256 of the canonical text, of a value whose shape is already checked. */
export const hashChecked = (digest: Digest, value: unknown): Promise<string> => digest(canonicalText(value as Json));

/** SHA-256(salt ‖ canonical content), of a part whose shape is already checked. */
export const hashCheckedPart = (digest: Digest, part: Part): Promise<string> => digest(fromHex(part.salt), canonicalText(part.content));

/** The fields that the phone made, without those that the edge added. */
export const sealedOf = (envelope: Sealed): Sealed => ({
  format: envelope.format,
  job: envelope.job,
  id: envelope.id,
  kind: envelope.kind,
  author: envelope.author,
  run: envelope.run,
  made: envelope.made,
  parts: envelope.parts,
});

/** Digest of attached content: SHA-256 of its canonical text, 64 hex digits. Refuses what `canonical` refuses. */
export async function contentDigest(digest: Digest, content: Json): Promise<Outcome<string>> {
  const fault = canonicalFault(content, "");
  return fault ? { ok: false, refusal: fault } : ok(await hashChecked(digest, content));
}

/** Digest of a part: SHA-256(32 salt bytes ‖ UTF-8 of the canonical content), 64 hex digits. Refuses `ledger-salt` and what `canonical` refuses. */
export async function partDigest(digest: Digest, part: Part): Promise<Outcome<string>> {
  if (!isHex64(part.salt)) return refuse("ledger-salt", "salt");
  const fault = canonicalFault(part.content, "content");
  return fault ? { ok: false, refusal: fault } : ok(await hashCheckedPart(digest, part));
}

/**
 * What makes two sendings the same entry: SHA-256 of the canonical sealed fields, 64 hex digits. An envelope may be handed
 * in whole; number, sent, received and before are left out, since a retry changes them. Refuses `ledger-shape`, `ledger-text-surrogate`.
 */
export async function entryDigest(digest: Digest, sealed: Sealed): Promise<Outcome<string>> {
  const exact = sealedOf(sealed);
  const fault = shapeFaults(sealedShape, exact)[0];
  return fault ? { ok: false, refusal: fault } : ok(await hashChecked(digest, exact));
}

/** Hash of an envelope in the chain: SHA-256 of all its fields, canonical, 64 hex digits. Refuses `ledger-shape`, `ledger-text-surrogate`. */
export async function envelopeHash(digest: Digest, envelope: Envelope): Promise<Outcome<string>> {
  const fault = shapeFaults(envelopeShape, envelope)[0];
  return fault ? { ok: false, refusal: fault } : ok(await hashChecked(digest, envelope));
}

/** The ledger's head once this envelope is its last. Refuses as `envelopeHash` does. */
export async function headAfter(digest: Digest, envelope: Envelope): Promise<Outcome<Head>> {
  const hash = await envelopeHash(digest, envelope);
  return hash.ok ? ok({ number: envelope.number, hash: hash.value }) : hash;
}

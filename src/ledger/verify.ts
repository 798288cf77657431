import { type Refusal, refuse } from "../outcome/index.ts";
import {
  formatFaults,
  hashFaults,
  headFaults,
  idFaults,
  jobFaults,
  linkFaults,
  numberFaults,
  partDigestFaults,
  presenceFaults,
  reasonFaults,
  versionFaults,
} from "./checks.ts";
import { type WithheldPart, withheldParts } from "./edition.ts";
import type { Body, Digest, Ledger, Sealed } from "./envelope.ts";
import { hashChecked } from "./hashes.ts";
import { bodyShape, ledgerShape, sealedShape, shapeFaults } from "./shape.ts";

export interface Verification {
  /** No faults. Withheld parts are none. */
  readonly ok: boolean;
  readonly faults: readonly Refusal[];
  readonly withheld: readonly WithheldPart[];
}

const refused = (faults: readonly Refusal[]): Verification => ({ ok: false, faults, withheld: [] });

const isOtherFormat = (input: unknown): boolean =>
  typeof input === "object" && input !== null && "format" in input && Number.isSafeInteger(input.format) && input.format !== 1;

/**
 * Verifies a ledger from anywhere: `input` is untrusted, any value at all, and never makes this throw. A ledger without
 * faults is whole and as it was chained; who chained it, the chain alone cannot say: compare its head with a sealed one.
 */
export async function verify(digest: Digest, input: unknown): Promise<Verification> {
  if (isOtherFormat(input)) return refused([refuse("ledger-format", "format", { known: 1 }).refusal]);
  const misshapen = shapeFaults(ledgerShape, input);
  if (misshapen.length > 0) return refused(misshapen);
  const ledger = input as Ledger;
  const hashes = await Promise.all(ledger.entries.map((entry) => hashChecked(digest, entry.envelope)));
  const parts = await Promise.all(
    ledger.entries.map(({ envelope, body }, i) => partDigestFaults(digest, envelope, body, `entries/${i}/body`)),
  );
  const faults = [
    ...formatFaults(ledger),
    ...jobFaults(ledger),
    ...numberFaults(ledger),
    ...idFaults(ledger),
    ...linkFaults(ledger, hashes),
    ...headFaults(ledger),
    ...hashFaults(ledger, hashes),
    ...ledger.entries.flatMap(({ envelope, body }, i) => presenceFaults(envelope, body, `entries/${i}/body`)),
    ...parts.flat(),
    ...reasonFaults(ledger),
    ...(await versionFaults(digest, ledger)),
  ];
  const withheld = ledger.entries.flatMap(({ envelope, body }) => withheldParts(envelope.number, body));
  return { ok: faults.length === 0, faults, withheld };
}

/** A phone has nothing to withhold: what it promises by a digest it must send. */
const withheldOnArrival = (body: Body): Refusal[] =>
  withheldParts(0, body).map(({ part }) => refuse("ledger-part-missing", `body/${part}`, { part }).refusal);

/**
 * Faults of one entry as it arrives from a phone, before it has a place in the chain. `sealed` and `body` are untrusted, any
 * values at all. No faults: every part is there and is what its digest was taken of, and the two are a `Sealed` and a `Body`.
 */
export async function arrivalFaults(digest: Digest, sealed: unknown, body: unknown): Promise<readonly Refusal[]> {
  if (isOtherFormat(sealed)) return [refuse("ledger-format", "sealed/format", { known: 1 }).refusal];
  const misshapen = [...shapeFaults(sealedShape, sealed, "sealed"), ...shapeFaults(bodyShape, body, "body")];
  if (misshapen.length > 0) return misshapen;
  const [entry, parts] = [sealed as Sealed, body as Body];
  return [...presenceFaults(entry, parts, "body"), ...withheldOnArrival(parts), ...(await partDigestFaults(digest, entry, parts, "body"))];
}

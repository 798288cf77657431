import { type Refusal, refuse } from "../outcome/index.ts";
import { isWithheld, isWithheldReason } from "./edition.ts";
import { type Body, type Digest, genesis, type Ledger, partNames, type Sealed } from "./envelope.ts";
import { hashChecked, hashCheckedPart } from "./hashes.ts";

// Each check takes a ledger whose shape is good and gives one kind of fault. Places are paths into the ledger, indices from 0.

const at = (index: number, rest: string): string => `entries/${index}/${rest}`;

/** `ledger-format`: an entry of another format than 1. */
export const formatFaults = (ledger: Ledger): Refusal[] =>
  ledger.entries.flatMap(({ envelope }, i) =>
    envelope.format === 1 ? [] : [refuse("ledger-format", at(i, "envelope/format"), { found: envelope.format, known: 1 }).refusal],
  );

/** `ledger-job`: an entry of another job than the ledger's. */
export const jobFaults = (ledger: Ledger): Refusal[] =>
  ledger.entries.flatMap(({ envelope }, i) =>
    envelope.job === ledger.job ? [] : [refuse("ledger-job", at(i, "envelope/job"), { number: i + 1 }).refusal],
  );

/** `ledger-number`: numbers that are not 1, 2, 3 ... without gap. */
export const numberFaults = (ledger: Ledger): Refusal[] =>
  ledger.entries.flatMap(({ envelope }, i) =>
    envelope.number === i + 1
      ? []
      : [refuse("ledger-number", at(i, "envelope/number"), { found: envelope.number, expected: i + 1 }).refusal],
  );

/** `ledger-duplicate-id`: an id that an earlier entry has. */
export function idFaults(ledger: Ledger): Refusal[] {
  const seen = new Map<string, number>();
  return ledger.entries.flatMap(({ envelope }, i) => {
    const earlier = seen.get(envelope.id);
    if (earlier === undefined) seen.set(envelope.id, i + 1);
    return earlier === undefined ? [] : [refuse("ledger-duplicate-id", at(i, "envelope/id"), { number: i + 1, earlier }).refusal];
  });
}

/** `ledger-link`: an entry that does not carry the hash of the envelope before it. Either of the two was changed. */
export const linkFaults = (ledger: Ledger, hashes: readonly string[]): Refusal[] =>
  ledger.entries.flatMap(({ envelope }, i) =>
    envelope.before === (i === 0 ? genesis.hash : hashes[i - 1])
      ? []
      : [refuse("ledger-link", at(i, "envelope/before"), { number: i + 1, before: i }).refusal],
  );

/** `ledger-head`: entries are missing at the end, or too many. */
export const headFaults = (ledger: Ledger): Refusal[] =>
  ledger.head.number === ledger.entries.length
    ? []
    : [refuse("ledger-head", "head/number", { found: ledger.entries.length, expected: ledger.head.number }).refusal];

/** `ledger-hash`: the last envelope does not have the head's hash. */
export const hashFaults = (ledger: Ledger, hashes: readonly string[]): Refusal[] =>
  ledger.head.hash === (hashes.at(-1) ?? genesis.hash) ? [] : [refuse("ledger-hash", "head/hash", { number: hashes.length }).refusal];

/** `ledger-part-missing`: a digest without its part. `ledger-part-unexpected`: a part without its digest. */
export const presenceFaults = (sealed: Sealed, body: Body, place: string): Refusal[] =>
  partNames.flatMap((part) => {
    const promised = sealed.parts[part] !== undefined;
    if (promised === (body[part] !== undefined)) return [];
    return [refuse(promised ? "ledger-part-missing" : "ledger-part-unexpected", `${place}/${part}`, { part }).refusal];
  });

/** `ledger-part-digest`: salt or content is not what the envelope's digest was taken of. */
export async function partDigestFaults(digest: Digest, sealed: Sealed, body: Body, place: string): Promise<Refusal[]> {
  const faults: Refusal[] = [];
  for (const name of partNames) {
    const part = body[name];
    const promised = sealed.parts[name];
    if (part === undefined || promised === undefined || isWithheld(part)) continue;
    if ((await hashCheckedPart(digest, part)) !== promised)
      faults.push(refuse("ledger-part-digest", `${place}/${name}`, { part: name }).refusal);
  }
  return faults;
}

/** `ledger-withheld-reason`: a part withheld for none of the known reasons. */
export const reasonFaults = (ledger: Ledger): Refusal[] =>
  ledger.entries.flatMap(({ body }, i) =>
    partNames.flatMap((name) => {
      const part = body[name];
      if (part === undefined || !isWithheld(part) || isWithheldReason(part.withheld)) return [];
      return [refuse("ledger-withheld-reason", at(i, `body/${name}/withheld`), { number: i + 1, part: name }).refusal];
    }),
  );

/** `ledger-version-digest`: an attached version is not what its digest was taken of. */
export async function versionFaults(digest: Digest, ledger: Ledger): Promise<Refusal[]> {
  const hashes = await Promise.all(ledger.versions.map((version) => hashChecked(digest, version.content)));
  return ledger.versions.flatMap((version, i) =>
    version.digest === hashes[i] ? [] : [refuse("ledger-version-digest", `versions/${i}/digest`, { version: i + 1 }).refusal],
  );
}

export { canonical, deepest } from "./canonical.ts";
export { digestBy, type Hashing } from "./digest.ts";
export {
  customerEdition,
  type EditionRule,
  isWithheld,
  isWithheldReason,
  type WithheldPart,
  type WithheldReason,
  withheldReasons,
  withhold,
} from "./edition.ts";
export {
  type AttachedVersion,
  type Author,
  type Body,
  type Digest,
  type Envelope,
  genesis,
  type Head,
  type Json,
  type Ledger,
  type LedgerEntry,
  type Part,
  type PartName,
  partNames,
  type Sealed,
  type Withheld,
} from "./envelope.ts";
export { contentDigest, entryDigest, envelopeHash, headAfter, partDigest, sealedOf } from "./hashes.ts";
export { chain, type Draft, type SealedEntry, seal } from "./seal.ts";
export { arrivalFaults, type Verification, verify } from "./verify.ts";

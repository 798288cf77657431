import type { Clearance, Finding } from "../job/index.ts";
import type { Head } from "../ledger/index.ts";

/** The files that a sealed record carries, by what each holds. */
export const fileNames = {
  findings: "findings.json",
  ledger: "ledger.json",
  model: "record.json",
  pages: "text.json",
  seal: "seal.jws",
} as const;

/** Files whose SHA-256 the seal names. */
export const sealedFiles = [fileNames.findings, fileNames.ledger, fileNames.model, fileNames.pages] as const;
export type SealedFile = (typeof sealedFiles)[number];

/** What is signed when a record is issued: a JWS payload (RFC 7515, alg EdDSA of RFC 8037). Digests are SHA-256, 64 hex digits. */
export interface RecordSeal {
  readonly format: 1;
  readonly company: string;
  readonly job: string;
  readonly record: string;
  readonly version: number;
  readonly edition: "customer" | "company";
  /** The edge's clock, ms since 1970 UTC. */
  readonly issuedAt: number;
  readonly head: Head;
  /** The rules that the findings were made by: their number and the digest of their built file. */
  readonly rules: { readonly version: number; readonly digest: string };
  /** Digest of the view model's canonical form, as the job's ledger has it too. */
  readonly modelDigest: string;
  /** Digest of every byte of each attached file. */
  readonly files: Readonly<Record<SealedFile, string>>;
  /** Originals of the pictures that the record shows, with the digest of the picture as it was printed; null: none was. */
  readonly photos: Readonly<Record<string, string | null>>;
  /** Papers that are bound in, by the digest of the file that was sent, with the digests of the pictures on their pages. */
  readonly papers?: Readonly<Record<string, readonly string[]>>;
}

/** `findings.json`: what was found, of the whole ledger. */
export interface SealedFindings {
  readonly format: 1;
  readonly findings: readonly Finding[];
  readonly clearances: readonly Clearance[];
  /** Places in `findings` and `clearances` of those that the attached edition alone does not give: they rest on withheld parts. */
  readonly withheld: { readonly findings: readonly number[]; readonly clearances: readonly number[] };
}

/** `text.json`: the words of every page, as a reader of the printed file finds them. */
export interface SealedPages {
  readonly format: 1;
  readonly pages: readonly string[];
}

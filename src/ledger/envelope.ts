export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** *what*: readings, answers, reasons, captions. *who*: names, contacts, signature. *where*: position fixes. */
export type PartName = "what" | "who" | "where";
export const partNames: readonly PartName[] = ["what", "who", "where"];

/** Random ids, never a name. */
export interface Author {
  readonly person: string;
  readonly phone: string;
}

/** What the phone makes and can sign for, before the edge has seen it. */
export interface Sealed {
  readonly format: 1;
  readonly job: string;
  readonly id: string;
  readonly kind: string;
  readonly author: Author;
  /** The phone's running number, from 0. */
  readonly run: number;
  /** The phone's clock when made, ms since 1970 UTC. */
  readonly made: number;
  /** Digest of each part that there is, 64 hex digits. */
  readonly parts: { readonly [P in PartName]?: string };
}

/** A sealed entry in its place in the chain. */
export interface Envelope extends Sealed {
  /** Order of receipt in the job, from 1 without gap. */
  readonly number: number;
  /** The phone's clock when sent, ms since 1970 UTC. */
  readonly sent: number;
  /** The edge's clock when received, ms since 1970 UTC. */
  readonly received: number;
  /** Hash of the envelope before, 64 hex digits; 64 zeros before the first. */
  readonly before: string;
}

export interface Part {
  /** 32 bytes of chance as 64 hex digits, so that a withheld part cannot be guessed from its digest. */
  readonly salt: string;
  readonly content: Json;
}

export interface Withheld {
  /** The reason, never empty. */
  readonly withheld: string;
}

export type Body = { readonly [P in PartName]?: Part | Withheld };

export interface LedgerEntry {
  readonly envelope: Envelope;
  readonly body: Body;
}

export interface Head {
  readonly number: number;
  readonly hash: string;
}

/** A version of a thing of the company's ledger that the job took over, attached so that verifying needs nothing else. */
export interface AttachedVersion {
  readonly kind: string;
  /** SHA-256 of the canonical content, 64 hex digits. */
  readonly digest: string;
  readonly content: Json;
}

export interface Ledger {
  readonly format: 1;
  readonly job: string;
  readonly head: Head;
  readonly entries: readonly LedgerEntry[];
  readonly versions: readonly AttachedVersion[];
}

/** The head before the first entry. */
export const genesis: Head = { number: 0, hash: "0".repeat(64) };

/**
 * SHA-256 of the pieces one after the other, a text as its UTF-8: 64 hex digits. Handed in: the core has no digest of its own.
 * A text is handed over as it is, since every platform turns it into bytes quicker than the core could; it is well-formed.
 */
export type Digest = (...pieces: readonly (string | Uint8Array<ArrayBuffer>)[]) => Promise<string>;

import type { Ledger, WithheldPart } from "../ledger/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { RecordModel } from "../record/index.ts";
import type { JudgedAgain } from "./judged-again.ts";
import type { RecordSeal, SealedFindings } from "./sealed-record.ts";

/** A record as it was read out of its PDF. */
export interface RecordFile {
  /** Attached files by name. */
  readonly files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
  /** The words of every page. */
  readonly pages: readonly string[];
  /** SHA-256 of each JPEG that the file holds, 64 hex digits. */
  readonly pictures: readonly string[];
}

/** What came of judging the attached ledger again under the rules that the record was sealed by. */
export type JudgedRecord =
  | { readonly is: "judged"; readonly again: JudgedAgain; readonly sealed: SealedFindings }
  /** Not judged, which is no fault of the record: the file of its rules is not here. Or the ledger cannot be read any more. */
  | { readonly is: "not judged"; readonly why: Refusal };

/** What a check does not look at: a key of the words. */
export const uncovered = ["fonts", "layout", "drawn", "place-of-pictures", "file-data", "whole-work"] as const;

export interface RecordCheck {
  /** `at odds`: nothing was changed since it was sealed, and yet what was sealed does not agree with itself or with its key. */
  readonly standing: "unchanged" | "changed" | "at odds" | "not sealed";
  /** Of a seal whose signature holds. */
  readonly seal?: RecordSeal;
  /** Thumbprint of the key that sealed it (RFC 7638). */
  readonly key?: string;
  /** Whose key that is, where a list of keys says so. */
  readonly company?: { readonly id: string; readonly name: string };
  readonly faults: readonly Refusal[];
  readonly withheld: readonly WithheldPart[];
  readonly judged?: JudgedRecord;
  /** The attached ledger, where it can be read, changed or not. */
  readonly ledger?: Ledger;
  /** The view model, where it is as it was sealed: names of entries and findings are taken from it. */
  readonly model?: RecordModel;
}

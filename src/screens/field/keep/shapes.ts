import type { DBSchema } from "idb";
import type { Clearance, Words } from "../../../job/index.ts";
import type { Ledger } from "../../../ledger/index.ts";
import type { PhotoState, SentEntry, SessionView, WireProblem } from "../../../wire/index.ts";

/** A job as the edge last gave it. */
export interface KeptJob {
  readonly job: string;
  readonly title: string;
  readonly ownNumber?: string;
  readonly ledger: Ledger;
  /** Digest of each entry by its id: what other entries refer to it by. */
  readonly digests: Readonly<Record<string, string>>;
  readonly photos: Readonly<Record<string, PhotoState>>;
  /** The phone's clock when it was read. */
  readonly readAt: number;
}

/**
 * An entry made on this phone. `acknowledged`: the edge has it under a number, and it goes when the kept ledger holds it;
 * `refused`: kept, marked, until a person decides.
 */
export interface OwnEntry {
  /** The phone's running number, and the key: entries leave in this order. */
  readonly run: number;
  readonly job: string;
  readonly id: string;
  readonly entry: SentEntry;
  readonly standing: "not sent" | "acknowledged" | "refused";
  readonly number?: number;
  readonly problem?: WireProblem;
}

/** A photo taken on this phone. `lost`: its bytes cannot be read any more, take it again. */
export interface OwnPhoto {
  readonly sha256: string;
  readonly job: string;
  /** The order in which it was taken. */
  readonly run: number;
  readonly type: string;
  readonly bytes: number;
  /** The phone's clock when it was taken, as well as the phone knows it. */
  readonly taken: number;
  readonly standing: "not sent" | "acknowledged" | "refused" | "lost";
  /** Not put to a picture yet: part of a burst. */
  readonly loose?: boolean;
  readonly problem?: WireProblem;
}

/** Bytes by hash: never rewritten. `small`: a picture of it for this phone's own pages. */
export interface PhotoBytes {
  readonly sha256: string;
  readonly bytes: ArrayBuffer;
}

/** What was typed and not entered yet, so that it survives the camera. */
export interface Draft {
  readonly place: string;
  readonly value: unknown;
}

/** One covering that is open, as the first screen says it. */
export interface GlanceLine {
  readonly covering: string;
  /** The words of the tolerance sheet, in each language that it speaks. */
  readonly act: Words | undefined;
  readonly state: Clearance["state"];
  /** How many lines hold it. */
  readonly held: number;
  /** About when it is to be covered, ms. */
  readonly about?: number;
}

/** What the first screen says of a job. True from `at` until before `until`, the edge's clock, ms. */
export interface Glance {
  readonly open: readonly GlanceLine[];
  readonly zone: string;
  readonly at: number;
  readonly until?: number;
}

/** A job's name and how far its ledger goes, written with it: what the first screen needs, without reading the ledger. */
export interface JobHead {
  readonly job: string;
  readonly title: string;
  readonly ownNumber?: string;
  readonly hash: string;
  readonly readAt: number;
  /** `mark`: what it was made of and by which app; it counts for nothing where that is another now. */
  readonly glance?: Glance & { readonly mark: string };
}

/** What the phone knows of itself, its people and the company. */
export interface AboutPhone {
  phone: { readonly id: string; readonly run: number };
  session: { readonly session: SessionView; readonly people: readonly { readonly person: string; readonly name: string }[] };
  today: { readonly person: string; readonly name: string; readonly day: string };
  /** Edge's clock less the phone's at the last contact, ms. */
  skew: { readonly milliseconds: number; readonly at: number };
  read: { readonly at: number };
  /** Whose the entries are that were left here when somebody signed out. */
  left: { readonly company: string };
}

export interface KeepSchema extends DBSchema {
  about: { key: keyof AboutPhone; value: AboutPhone[keyof AboutPhone] };
  jobs: { key: string; value: KeptJob };
  heads: { key: string; value: JobHead };
  entries: { key: number; value: OwnEntry; indexes: { job: string } };
  photos: { key: string; value: OwnPhoto; indexes: { job: string } };
  bytes: { key: string; value: PhotoBytes };
  small: { key: string; value: PhotoBytes };
  drafts: { key: string; value: Draft };
  reserve: { key: string; value: { readonly name: string; readonly bytes: ArrayBuffer } };
}

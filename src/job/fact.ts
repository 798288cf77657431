import type { Json } from "../ledger/index.ts";
import type { Region } from "../photo/index.ts";

/** The kinds of fact. An unknown kind is kept and shown as unknown; it breaks neither chain nor phone. */
export const factKinds = [
  "job-opened",
  "version-taken-over",
  "design-set",
  "tag-named",
  "set-up-made",
  "reading-taken",
  "picture-taken",
  "picture-read",
  "picture-looked-at",
  "answered",
  "does-not-apply",
  "could-not-be-taken",
  "note-for-record",
  "note-for-office",
  "paper-added",
  "visit-begun",
  "visit-ended",
  "done-by-others",
  "inspected-by-authority",
  "received-otherwise",
  "site-located",
  "corrected",
  "moved-out",
  "moved-in",
  "covering-announced",
  "covered",
  "opened-up-again",
  "rework-asked",
  "reworked",
  "go-ahead",
  "departure-agreed",
  "concession",
  "left-to-do",
  "left-to-do-done",
  "looked-again",
  "region-blurred",
  "body-withheld",
  "signed",
  "declined",
  "not-reached",
  "record-issued",
  "record-released",
  "callback-opened",
  "callback-closed",
  "service-done",
  "opened-late",
  "rules-moved",
] as const;
export type FactKind = (typeof factKinds)[number];

export type Role = "crew" | "office" | "company owner";

/** What a fact is about: an item or a check of the sheet, and the tag where it repeats. */
export interface About {
  readonly item?: string;
  readonly check?: string;
  readonly tag?: string;
  /** A whole step; only of what is left to do. */
  readonly step?: string;
}

/** Offline an entry is named by id and digest, never by number. */
export interface EntryReference {
  readonly id: string;
  readonly digest: string;
}

export interface Typed {
  readonly typed: string;
  readonly unit: string;
}

/** One entry as the core sees it: the envelope's fields and whatever of the body has not been withheld. */
export interface Entry {
  readonly id: string;
  readonly digest: string;
  readonly kind: string;
  readonly author: { readonly person: string; readonly phone: string };
  /** The phone's running number. */
  readonly run: number;
  /** The phone's clock when made and when sent; the edge's when received. Milliseconds. Absent while only the phone has it. */
  readonly made: number;
  readonly sent?: number;
  readonly received?: number;
  readonly number?: number;
  readonly what?: Json;
  readonly who?: Json;
  readonly where?: Json;
}

/** The `what` of each kind that findings and clearance read. Names, contacts and signatures stand in `who`, fixes in `where`. */
export interface Whats {
  "job-opened": { title: string; ownNumber?: string; zone: string; language: "en" | "es"; units: "inch" | "metric"; late?: boolean };
  "version-taken-over": { thing: "sheet" | "kit card" | "settings"; name: string; number: number; digest: string };
  "design-set": { figures?: Readonly<Record<string, Typed | "unknown">>; switches?: Readonly<Record<string, boolean>>; reason?: string };
  /** `description`: what it is, in words: 'joint group behind the basin'. */
  "tag-named": { set: string; tag: string; hiddenBy: string; description?: string };
  "set-up-made": { instrument: string; receiver?: "fine" | "coarse"; distance?: Typed };
  "reading-taken": {
    item: string;
    tag?: string;
    typed: string;
    unit: string;
    setUp?: string;
    instrument?: string;
    placing?: string;
    receiver?: "fine" | "coarse";
    distance?: Typed;
    /** A tie: the name of the fixed mark that it was taken from. */
    mark?: string;
    /** A tie: on which side its point lies for someone at the mark of the point's first tie who looks to that of its second. */
    side?: "left" | "right";
    /** When it was read, where that is not when it was entered. */
    at?: number;
  };
  "picture-taken": {
    item: string;
    tag?: string;
    /** SHA-256 of the original bytes, hex. */
    photo: string;
    bytes: number;
    type: string;
    /** The app's own capture moment, phone's clock. */
    taken?: number;
    /** What the phone itself judged. */
    judged?: "readable" | "unreadable";
    caption?: string;
  };
  "picture-read": { photo: string; facts: Json };
  "picture-looked-at": { picture: string; says: "shows it" | "does not show it" | "cannot tell" };
  answered: { item: string; tag?: string; choice: string };
  "does-not-apply": { about: About; reason: string; role: Role };
  "could-not-be-taken": { about: About; reason: string };
  "note-for-record": { text: string; step?: string; tag?: string };
  "note-for-office": { text: string };
  "paper-added": { title: string; paper: string; photo?: string };
  "visit-begun": { note?: string };
  "visit-ended": { staysOpen?: string; note?: string };
  "done-by-others": { what: string; step?: string };
  "inspected-by-authority": { what: string; state: "not required here" | "applied" | "due" | "passed" | "failed"; number?: string };
  "received-otherwise": { item: string; tag?: string; photo: string; bytes: number; type: string; how: string; when?: string };
  /** The site's place stands in `where`; `reaches`: how far from there the site goes, micrometres. */
  "site-located": { how: string; reaches?: number };
  corrected: { entry: EntryReference; reason: string; withdrawn?: boolean; replace?: { readonly [key: string]: Json } };
  "moved-out": { entries: readonly EntryReference[]; to: string; reason: string };
  "moved-in": { from: string; reason: string; entries: readonly MovedEntry[] };
  "covering-announced": { covering: string; about: number };
  covered: {
    covering: string;
    shown: "clear" | "on word" | "not yet";
    lines: readonly string[];
    sheet: string;
    rules: number;
    restedOn: readonly EntryReference[];
    at?: number;
  };
  "opened-up-again": { covering: string; exposed: readonly About[] | "all"; reason: string };
  "rework-asked": { about: About; reason: string };
  reworked: { about: About; done: string; minutes: number };
  /** By telephone: whose word stands in `who`; the office confirms with an entry that names the first. */
  "go-ahead": { covering: string; reason: string; role: Role; about?: readonly About[]; confirms?: string };
  "departure-agreed": { about: About; lower?: number; upper?: number; reason: string };
  concession: { about: About; extent: string; reason: string };
  "left-to-do": { text: string; by: string; about?: About };
  "left-to-do-done": { entry: EntryReference; note?: string };
  "looked-again": { about: About; note?: string };
  /** `regions`: millionths of the upright picture's width and height. */
  "region-blurred": { photo: string; rendition: string; regions?: readonly Region[]; reason: string };
  "body-withheld": { entry: EntryReference; parts: readonly string[]; reason: string };
  signed: { relation: string; language: string; textDigest?: string };
  declined: { objection: string };
  "not-reached": { how: string };
  "record-issued": { version: number; head: { number: number; hash: string }; modelDigest: string; edition: string };
  "record-released": { version: number; to: string };
  "callback-opened": { symptom: string };
  "callback-closed": { cause: string };
  "service-done": { service: string; date: string };
  "opened-late": { reason: string };
  "rules-moved": { from: number; to: number; changed: readonly string[] };
}

/** An entry filed under the wrong job, as the right job takes it over: its own time and author travel with it. */
export interface MovedEntry {
  readonly id: string;
  readonly kind: string;
  readonly author: { readonly person: string; readonly phone: string };
  readonly run: number;
  readonly made: number;
  readonly what: Json;
}

import type { Json } from "../ledger/index.ts";
import type { CardPaper, Region } from "../photo/index.ts";

/** The kinds of fact. An unknown kind is kept and shown as unknown; it breaks neither chain nor phone. */
export const factKinds = [
  "job-opened",
  "version-taken-over",
  "design-set",
  "tag-named",
  "set-up-made",
  "reading-taken",
  "read-again",
  "picture-taken",
  "picture-read",
  "photo-measured",
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
  "go-ahead-denied",
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
  "delivered-unsigned",
  "in-use",
  "cover-started",
  "part-kept",
  "part-replaced",
  "part-registered",
  "new-owner",
  "opened-late",
  "particulars-set",
  "site-taken-over",
  "rules-moved",
] as const;
export type FactKind = (typeof factKinds)[number];

/** Who bears the cost of a callback. */
export const borneBy = ["company", "maker", "customer", "others"] as const;
export type BorneBy = (typeof borneBy)[number];

/** How an authority's inspection stands, as somebody told it; the program judges none. */
export const inspectionStates = ["not required here", "applied", "due", "passed", "failed"] as const;
export type InspectionState = (typeof inspectionStates)[number];

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

/** A spot of a photo and its standard uncertainty along each axis, thousandths of a pixel; the first pixel's middle is 500, 500. */
export type SeenSpot = readonly [x: number, y: number, u: number];

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
  /** Address, customer, contact on site and receiver of the record stand in `who`. `site`, `crew`: ids. */
  "job-opened": {
    title: string;
    ownNumber?: string;
    order?: string;
    invoice?: string;
    site?: string;
    crew?: readonly string[];
    zone: string;
    language: "en" | "es";
    units: "inch" | "metric";
    late?: boolean;
  };
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
  /** The same place read by someone else without sight of the first: how far the two lie apart is learned from it, and no finding goes by it. */
  "read-again": { reading: string; item: string; tag?: string; typed: string; unit: string; instrument?: string; setUp?: string };
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
  /** Two spots of a photo with a card in it, beside a reading: the length between them follows from these numbers alone. */
  "photo-measured": {
    item: string;
    tag?: string;
    /** SHA-256 of the original bytes, hex, and its pixels when upright. */
    photo: string;
    width: number;
    height: number;
    paper: CardPaper;
    /** What a tape said beside the card's check ruler. */
    ruler?: Typed;
    /** Codes that were seen, by their place on the card: 0 the upper left one, then clockwise; corners of each likewise. */
    codes: readonly { place: 0 | 1 | 2 | 3; corners: readonly [SeenSpot, SeenSpot, SeenSpot, SeenSpot] }[];
    /** The phone's lens as it was measured, millionths at half the picture's diagonal. */
    lens?: { distortion: number; within: number };
    from: SeenSpot;
    to: SeenSpot;
  };
  "picture-looked-at": { picture: string; says: "shows it" | "does not show it" | "cannot tell" };
  answered: { item: string; tag?: string; choice: string };
  "does-not-apply": { about: About; reason: string; role: Role };
  "could-not-be-taken": { about: About; reason: string };
  "note-for-record": { text: string; step?: string; tag?: string };
  "note-for-office": { text: string };
  /** `paper`: what kind of paper it is, in words. `photo`: a picture of it; `pdf`: SHA-256 of it as a PDF. */
  "paper-added": { title: string; paper: string; photo?: string; pdf?: string };
  "visit-begun": { note?: string };
  "visit-ended": { staysOpen?: string; note?: string };
  /** Whoever did it stands in `who`. `photo`: his paper, a picture; `paper`: SHA-256 of his paper, a PDF. `link`: entered by its use. */
  "done-by-others": { what: string; step?: string; photo?: string; paper?: string; link?: string };
  /** Who says so, the authority or whoever asked it, stands in `who`. `day`: applied, due or inspected on. `photo`: its tag or paper. */
  "inspected-by-authority": {
    what: string;
    state: InspectionState;
    number?: string;
    day?: string;
    photo?: string;
  };
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
  /** The office was asked after a go-ahead by telephone, and nobody had given it. `goAhead`: its entry. */
  "go-ahead-denied": { goAhead: string; reason: string };
  "departure-agreed": { about: About; lower?: number; upper?: number; reason: string };
  /** `customerSaid`: the customer's word, where the tolerance sheet asks for it; his name stands in `who`. */
  concession: { about: About; extent: string; reason: string; customerSaid?: string };
  "left-to-do": { text: string; by: string; about?: About };
  "left-to-do-done": { entry: EntryReference; note?: string };
  "looked-again": { about: About; note?: string };
  /** `regions`: millionths of the upright picture's width and height. */
  "region-blurred": { photo: string; rendition: string; regions?: readonly Region[]; reason: string };
  "body-withheld": { entry: EntryReference; parts: readonly string[]; reason: string };
  /** `text`: what was shown, word for word, in `language`; `textDigest`: SHA-256 of its UTF-8 bytes. */
  signed: { relation: string; language: string; textDigest?: string; text?: string };
  declined: { objection: string };
  "not-reached": { how: string };
  "record-issued": {
    version: number;
    head: { number: number; hash: string };
    modelDigest: string;
    edition: string;
    /** SHA-256 of the seal, and the thumbprint of the key that made it; absent before records were sealed. */
    seal?: string;
    key?: string;
  };
  "record-released": { version: number; to: string };
  /** `said`: in the customer's own words. A planned return visit is none: it is a service. */
  "callback-opened": { symptom: string; said?: string; day?: string };
  /** `cause`: as confirmed, or as supposed where `confirmed` is false. Money in hundredths of the company's currency. */
  "callback-closed": {
    cause: string;
    callback?: string;
    confirmed?: boolean;
    supposed?: string;
    part?: string;
    borneBy?: BorneBy;
    minutes?: number;
    travelMinutes?: number;
    partsCost?: number;
    recovered?: number;
  };
  "service-done": { service: string; date: string; note?: string };
  /** Handed over without a signature. `day`: 'YYYY-MM-DD', as all days below. */
  "delivered-unsigned": {
    how: string;
    day: string;
    to: string;
    because: "not reached" | "declined" | "vacant";
    objection?: string;
    language?: string;
    text?: string;
    textDigest?: string;
  };
  /** The customer has the installation in use. */
  "in-use": { since: string; how: string };
  /** A start of cover that no step of the work shows. Without a part: of the whole job. */
  "cover-started": { rule: "invoice paid" | "date of sale"; day: string; part?: string; paper?: string };
  /** An old part that stays in the installation. */
  "part-kept": { part: string; why: string };
  "part-replaced": { part: string; day: string; why: "under warranty" | "sold"; serial?: string; callback?: string };
  "part-registered": { part: string; day: string; number?: string };
  /** The house has a new owner, whose name stands in `who`. */
  "new-owner": { day: string };
  /** `steps` and `coverings`: those that had been done before the record began. */
  "opened-late": { reason: string; steps?: readonly string[]; coverings?: readonly string[] };
  /** What changed of a job's particulars since it was opened; each lies over what was said before. Contacts stand in `who`. */
  "particulars-set": { title?: string; order?: string; invoice?: string; crew?: readonly string[]; reason?: string };
  /** The site that the job shares with others, as the company's ledger has it at `number`. Its address stands in `who`. */
  "site-taken-over": { site: string; number: number; heightMark?: string; tieMarks?: readonly string[] };
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

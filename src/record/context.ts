import type { Finding, JobState, Live, ToleranceSheet } from "../job/index.ts";
import type { Sayer } from "./say.ts";
import type { CompanySettings } from "./settings.ts";
import type { Language } from "./when.ts";
import type { RecordText } from "./words/record-en.ts";

/** What the record is told of a photo that the office has. */
export interface PhotoKnown {
  /** Key of the rendition to print. */
  readonly rendition?: string;
  readonly width?: number;
  readonly height?: number;
  /** Parts of it are blurred in what is printed. */
  readonly blurred?: boolean;
  readonly unreadable?: boolean;
  /** The camera's own wall clock, as it printed it. */
  readonly taken?: string;
  /** The camera kept no time that can be used: what prints is the phone's and the office's. */
  readonly timeless?: boolean;
  readonly place?: "position-in-photo" | "no-position" | "position-withheld" | "position-unusable";
}

/** What every part of the record's view model is made from. */
export interface Context {
  readonly state: JobState;
  readonly sheet: ToleranceSheet;
  readonly settings: CompanySettings;
  readonly findings: readonly Finding[];
  readonly sayer: Sayer;
  readonly photos: Readonly<Record<string, PhotoKnown>>;
  /** Fixed words of the record's own sentences. */
  readonly texts: (key: RecordText) => string;
  readonly language: Language;
  readonly edition: "customer" | "company";
  /** A typed day as it prints; anything else as it stands. */
  readonly day: (typed: string) => string;
  readonly numberOf: (entry: string) => number | undefined;
  readonly nameOf: (fact: Live) => string;
  /** The name typed with a fact, as the edition prints it; undefined where none was. */
  readonly nameTyped: (fact: Live) => string | undefined;
  /** Any name that belongs to a fact of the job, as the edition prints it. */
  readonly namePrinted: (name: string, role: string) => string;
  /** Last look at a picture, by the picture's entry. */
  readonly lookedAt: ReadonlyMap<string, Live>;
  readonly beforeRework: ReadonlySet<string>;
}

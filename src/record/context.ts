import type { Finding, JobState, Live, ToleranceSheet } from "../job/index.ts";
import type { Sayer } from "./say.ts";
import type { CompanySettings } from "./settings.ts";
import type { RecordText } from "./words/record-en.ts";

/** What the record is told of a photo that the office has. */
export interface PhotoKnown {
  /** Key of the rendition to print. */
  readonly rendition?: string;
  readonly width?: number;
  readonly height?: number;
  readonly unreadable?: boolean;
  /** The camera's own wall clock, as it printed it. */
  readonly taken?: string;
  readonly place?: "position-in-photo" | "no-position";
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
  readonly source: (source: string) => string;
  readonly numberOf: (entry: string) => number | undefined;
  readonly nameOf: (fact: Live) => string;
  readonly instantTyped: (fact: Live) => string;
  /** Last look at a picture, by the picture's entry. */
  readonly lookedAt: ReadonlyMap<string, Live>;
  readonly beforeRework: ReadonlySet<string>;
}

import type { Opening } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { OpeningFact } from "./facts.ts";

/** One job to be opened. */
export interface Asked {
  readonly place: Place;
  readonly opening: Opening;
  /** Its id was drawn just now: nothing can be there. */
  readonly fresh?: boolean;
  /** Digest of the line of a table that it comes from. */
  readonly line?: string;
}

/** A job that is there, and what a line of a table changes of it. */
export interface Changed {
  readonly place: Place;
  readonly facts: readonly OpeningFact[];
  readonly number: string;
  readonly line: string;
}

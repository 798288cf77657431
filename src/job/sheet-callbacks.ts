import type { Words } from "./words.ts";

/** What a customer calls about. A planned return visit is no callback. */
export const symptoms = [
  "water low",
  "water bill",
  "wet ground",
  "no flow",
  "noise",
  "breaker or ground fault trips",
  "edge or lid sunk",
  "splash",
  "frozen",
  "foam or smell",
  "damage by others",
] as const;
export type Symptom = (typeof symptoms)[number];

/** One thing of the job's own record to look at: a check, or an item that no check reads. */
export interface CallbackLook {
  readonly check?: string;
  readonly item?: string;
  /** What it would mean. */
  readonly why: Words;
}

/** What to look at first when a customer calls about something. */
export interface CallbackAsked {
  readonly symptom: Symptom;
  readonly cautions: readonly string[];
  /** Asked by telephone before anybody drives out. */
  readonly ask: readonly Words[];
  readonly look: readonly CallbackLook[];
}

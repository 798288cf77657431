import type { Json } from "../ledger/index.ts";
import { factsOf, type JobState } from "./state.ts";

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};

/**
 * Address, customer, contact on site and receiver of the record, as the office last said each of them: with the opening, with a
 * site that was taken over, or as a change since. Whatever was withheld is not there.
 */
export function jobWho(state: JobState): Fields {
  const said = [...factsOf(state, "job-opened"), ...factsOf(state, "site-taken-over"), ...factsOf(state, "particulars-set")];
  return Object.assign({}, ...[...said].sort((a, b) => a.position - b.position).map(({ entry }) => fields(entry.who))) as Fields;
}

/** The site's fixed marks in words, as its jobs share them. */
export function siteMarks(state: JobState): { readonly heightMark?: string; readonly tieMarks: readonly string[] } {
  const last = factsOf(state, "site-taken-over").at(-1)?.what;
  return { ...(last?.heightMark === undefined ? {} : { heightMark: last.heightMark }), tieMarks: last?.tieMarks ?? [] };
}

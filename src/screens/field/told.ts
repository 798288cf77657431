import { useCallback, useMemo } from "preact/hooks";
import { beforehandOf, type Clearance, handingOver } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { type JobNow, sayerOf } from "../parts/job-now.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { clearancesOf } from "./keep/book.ts";
import { type Book, useBook, useKeep } from "./keep/index.ts";
import { lazily } from "./keep/lazily.ts";
import { useMinute } from "./minute.ts";

/**
 * A job as this phone knows it, in the shape that the shared parts of the pages read; each part is judged when a page asks for it.
 * `now`: the edge's clock, ms.
 */
export function jobOnPhone(book: Book, people: JobNow["people"], now: number): JobNow {
  const { kept } = book;
  const { job, title, ownNumber, ledger, photos } = kept;
  const clearances = lazily(() => clearancesOf(book, now));
  const handed = lazily(() => handingOver(book.state, book.findings, now));
  const before = lazily(() => beforehandOf(book.state, book.findings, now));
  return {
    view: { job, title, ...(ownNumber === undefined ? {} : { ownNumber }), head: ledger.head, entries: ledger.entries.length, photos },
    get findings() {
      return book.findings;
    },
    get clearances() {
      return clearances();
    },
    get handingOver() {
      return handed();
    },
    get beforehand() {
      return before();
    },
    get state() {
      return book.state;
    },
    ledger,
    people,
  };
}

export interface ToldOnPhone {
  readonly book: Book;
  readonly now: JobNow;
  readonly sayer: Sayer;
}

export const nextInstants = (clearances: readonly Clearance[]): readonly (number | undefined)[] =>
  clearances.flatMap(({ lines }) => lines.map(({ from }) => from));

/** One job of this phone with its sentences; undefined when the phone does not hold it. */
export function useTold(job: string): ToldOnPhone | undefined {
  const { session, say } = useSpeaking();
  const { state } = useKeep();
  const book = useBook(job);
  const now = useMinute(useCallback(() => book?.findings.map(({ from }) => from) ?? [], [book]));
  return useMemo(() => {
    if (book === undefined) return undefined;
    const people = state.people.map(({ person, name }) => ({ person, name, role: "crew" as const }));
    const told = jobOnPhone(book, people, now);
    return { book, now: told, sayer: sayerOf(told, session.language, session.units, say("someone")) };
  }, [book, state.people, now, session.language, session.units, say]);
}

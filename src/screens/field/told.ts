import { useEffect, useMemo, useState } from "preact/hooks";
import { beforehandOf, type Clearance, handingOver } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { type JobNow, sayerOf } from "../parts/job-now.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { type Book, clearancesOf, useBook, useKeep } from "./keep/index.ts";

/** A job as this phone knows it, in the shape that the shared parts of the pages read. `now`: the edge's clock, ms. */
export function jobOnPhone(book: Book, people: JobNow["people"], now: number): JobNow {
  const { kept, state, findings } = book;
  const { job, title, ownNumber, ledger, photos } = kept;
  return {
    view: { job, title, ...(ownNumber === undefined ? {} : { ownNumber }), head: ledger.head, entries: ledger.entries.length, photos },
    findings,
    clearances: clearancesOf(book, now),
    handingOver: handingOver(state, findings, now),
    beforehand: beforehandOf(state, findings, now),
    state,
    ledger,
    people,
  };
}

const MINUTE_MS = 60_000;

/** Moves on with the minute, and at the instant at which the next waiting thing is met. */
export function useMinute(until: readonly (number | undefined)[] = []): number {
  const { keep } = useKeep();
  const [now, setNow] = useState(() => keep.now());
  const next = Math.min(MINUTE_MS, ...until.filter((at): at is number => at !== undefined && at > now).map((at) => at - now + 50));
  useEffect(() => {
    const timer = setTimeout(() => setNow(keep.now()), next);
    return () => clearTimeout(timer);
  }, [keep, next, now]);
  return now;
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
  const instants = useMemo(() => book?.findings.map(({ from }) => from) ?? [], [book]);
  const now = useMinute(instants);
  return useMemo(() => {
    if (book === undefined) return undefined;
    const people = state.people.map(({ person, name }) => ({ person, name, role: "crew" as const }));
    const told = jobOnPhone(book, people, now);
    return { book, now: told, sayer: sayerOf(told, session.language, session.units, say("someone")) };
  }, [book, state.people, now, session.language, session.units, say]);
}

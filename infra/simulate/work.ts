import type { DatabaseCall } from "./counted-database.ts";

/** What one request asked of the edge's surroundings, as it was counted while the real edge code answered it. */
export interface Work {
  /** Method and route, ids as `:id`. */
  readonly kind: string;
  readonly status: number;
  /** In their order, those after the answer too. */
  readonly calls: readonly DatabaseCall[];
  /** Processor time of the edge code, without that of SQLite. */
  readonly processorMs: number;
  readonly storeCalls: number;
  /** Those of them that only read. */
  readonly storeReads: number;
  readonly mediaCalls: number;
  readonly printCalls: number;
  readonly queued: number;
  readonly bytesIn: number;
  readonly bytesOut: number;
  /** Jobs that the company had by then. */
  readonly jobs: number;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

export const statementsOf = ({ calls }: Work): number => sum(calls.map(({ statements }) => statements));
export const rowsOf = ({ calls }: Work): number => sum(calls.map(({ rows }) => rows));
export const writtenOf = ({ calls }: Work): number => sum(calls.map(({ written }) => written));
export const charactersOf = ({ calls }: Work): number => sum(calls.map(({ characters }) => characters));
export const sqliteMsOf = ({ calls }: Work): number => sum(calls.map(({ milliseconds }) => milliseconds));
/** Requests that the platform counts against one invocation: each statement, and each call of store, media, print and queue. */
export const subrequestsOf = (work: Work): number =>
  statementsOf(work) + work.storeCalls + work.mediaCalls + work.printCalls + (work.queued > 0 ? 1 : 0);

/** Ids, hashes and months as `:id`; what is asked behind `?` is left out. */
export const kindOf = (method: string, path: string): string =>
  `${method} ${(path.split("?")[0] ?? "")
    .split("/")
    .map((part) => (/^[0-9a-f]{20,}$|^[\w-]{40,}$|^c-\d+$/.test(part) ? ":id" : part))
    .join("/")}`;

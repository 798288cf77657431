import type { DatabaseCall } from "./counted-database.ts";
import type { StepName, Trace } from "./step.ts";
import type { Work } from "./work.ts";

/** `at` jobs of a company: at + per times jobs. */
export interface Line {
  readonly base: number;
  readonly perJob: number;
}

type Point = readonly [jobs: number, value: number];

const meansOf = (points: readonly Point[]): Point =>
  [0, 1].map((i) => points.reduce((total, point) => total + (point[i] ?? 0), 0) / points.length) as unknown as Point;

/**
 * Through the means of two companies that did the same and differ in their past: within one, jobs become more and longer at the same time,
 * which would be taken for growth. Level where either is missing, and never falling.
 */
export function lineOf(young: readonly Point[], old: readonly Point[]): Line {
  if (young.length === 0 || old.length === 0) return { base: meansOf([...young, ...old])[1] || 0, perJob: 0 };
  const [[fewer, less], [more, greater]] = [meansOf(young), meansOf(old)];
  const perJob = more > fewer ? Math.max(0, (greater - less) / (more - fewer)) : 0;
  return { base: Math.max(0, less - perJob * fewer), perJob };
}

export const valueAt = ({ base, perJob }: Line, jobs: number): number => base + perJob * jobs;

const sum = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((total, one) => total + of(one), 0);

/** What of a request's work may grow with a company's past. */
export const measures = {
  sqliteMs: ({ calls }: Work) => sum(calls, (call) => call.milliseconds),
  characters: ({ calls }: Work) => sum(calls, (call) => call.characters),
  rows: ({ calls }: Work) => sum(calls, (call) => call.rows),
  statements: ({ calls }: Work) => sum(calls, (call) => call.statements),
  processorMs: ({ processorMs }: Work) => processorMs,
} as const;
export type Measure = keyof typeof measures;

/** Of every kind of request how a measure goes with the company's jobs. */
export function linesOf(traces: readonly Trace[], of: (work: Work) => number): ReadonlyMap<string, Line> {
  const byKind = new Map<string, { readonly young: Point[]; readonly old: Point[]; readonly others: Point[] }>();
  for (const { works, comparable, old } of traces)
    for (const work of works) {
      const points = byKind.get(work.kind) ?? { young: [], old: [], others: [] };
      byKind.set(work.kind, points);
      (comparable ? (old ? points.old : points.young) : points.others).push([work.jobs, of(work)]);
    }
  return new Map(
    [...byKind].map(([kind, { young, old, others }]) => [
      kind,
      young.length > 0 && old.length > 0 ? lineOf(young, old) : lineOf([...young, ...old, ...others], []),
    ]),
  );
}

export const growthOf = (traces: readonly Trace[]): Readonly<Record<Measure, ReadonlyMap<string, Line>>> =>
  Object.fromEntries(Object.entries(measures).map(([name, of]) => [name, linesOf(traces, of)])) as Record<
    Measure,
    ReadonlyMap<string, Line>
  >;

/** A call as it is served: whether the directory is asked, how long the database is held, and how long its answer takes beyond that. */
export interface ServedCall {
  readonly directory: boolean;
  readonly holds: number;
  readonly after: number;
}
/** The calls of a step's requests, one after another. */
export interface ServedStep {
  /** How long each of its requests holds its own database. */
  readonly holds: readonly (readonly [kind: string, milliseconds: number])[];
  readonly calls: readonly ServedCall[];
  /** What goes by between them, milliseconds: processor, phone and store. */
  readonly between: number;
}

export interface Times {
  readonly callMs: number;
  readonly writeMs: number;
  readonly flushMs: number;
  readonly databaseMs: number;
  readonly megabytesPerSecond: number;
  readonly sqliteFactor: number;
  readonly phoneMs: number;
  readonly storeMs: number;
}

/** One call of a database that holds it, from what was counted. */
export function servedCall(call: DatabaseCall, sqliteMs: number, characters: number, times: Times): ServedCall {
  const holds =
    times.callMs + sqliteMs * times.sqliteFactor + characters / (times.megabytesPerSecond * 1000) + (call.writes ? times.writeMs : 0);
  return { directory: call.database === "directory", holds, after: times.databaseMs + (call.writes ? times.flushMs : 0) };
}

/** Every trace of every step as it would be in a company of so many jobs: a measure that grows is lifted by its line. */
export function servedSteps(traces: readonly Trace[], jobs: number, times: Times): ReadonlyMap<StepName, readonly ServedStep[]> {
  const growth = growthOf(traces);
  const lifted = (work: Work, measure: Measure, value: number): number => {
    const line = growth[measure].get(work.kind);
    const here = line === undefined ? 0 : valueAt(line, work.jobs);
    return line === undefined || here === 0 ? value : (value * valueAt(line, jobs)) / here;
  };
  const byStep = new Map<StepName, ServedStep[]>();
  for (const { step, works } of traces) {
    const served = works.map((work) =>
      work.calls.map((call) =>
        servedCall(call, lifted(work, "sqliteMs", call.milliseconds), lifted(work, "characters", call.characters), times),
      ),
    );
    const calls = served.flat();
    const ownTime = (list: readonly ServedCall[]): number => sum(list, ({ directory, holds }) => (directory ? 0 : holds));
    const holds = works.map(({ kind }, i) => [kind, ownTime(served[i] ?? [])] as const);
    const between =
      sum(works, (work) => lifted(work, "processorMs", work.processorMs) + work.storeCalls * times.storeMs) + works.length * times.phoneMs;
    byStep.set(step, [...(byStep.get(step) ?? []), { holds, calls, between }]);
  }
  return byStep;
}

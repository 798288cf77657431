import type { Platform } from "./platform.ts";
import type { Trace } from "./step.ts";
import { type Line, linesOf } from "./traces.ts";
import { subrequestsOf } from "./work.ts";

/** A limit of the platform on one request, which a company's past alone reaches, however many other crews there are. */
export interface PastLimit {
  readonly what: "answer of one call, MB" | "statements" | "subrequests" | "processor, ms";
  readonly kind: string;
  readonly limit: number;
  /** Most that was counted in one request. */
  readonly counted: number;
  /** Jobs of a company at which the request passes the limit, by its line; undefined where it does not grow. */
  readonly jobs?: number;
}

const jobsAt = ({ base, perJob }: Line, limit: number): number | undefined =>
  perJob <= 0 ? undefined : Math.max(0, (limit - base) / perJob);

/** For each limit the kind of request that reaches it first. */
export function pastLimits(traces: readonly Trace[], limits: Platform["limits"]): readonly PastLimit[] {
  const works = traces.flatMap((trace) => trace.works);
  const bytesOf = (work: (typeof works)[number]): number =>
    work.calls.reduce((most, { characters }) => Math.max(most, characters), 0) / 1e6;
  const ways = [
    { what: "answer of one call, MB", limit: limits.databaseResultMegabytes, of: bytesOf },
    { what: "statements", limit: limits.databaseStatements, of: (work) => work.calls.reduce((sum, { statements }) => sum + statements, 0) },
    { what: "subrequests", limit: limits.subrequests, of: subrequestsOf },
    { what: "processor, ms", limit: limits.processorMs, of: ({ processorMs }) => processorMs },
  ] as const satisfies readonly { what: PastLimit["what"]; limit: number; of: (work: (typeof works)[number]) => number }[];
  return ways.flatMap(({ what, limit, of }) => {
    const rows = [...linesOf(traces, of)].map(([kind, line]) => {
      const counted = works.reduce((most, work) => (work.kind === kind ? Math.max(most, of(work)) : most), 0);
      const jobs = jobsAt(line, limit);
      return { what, kind, limit, counted, ...(jobs === undefined ? {} : { jobs: Math.floor(jobs) }) };
    });
    const [first] = rows.sort(
      (a, b) => (a.jobs ?? Number.POSITIVE_INFINITY) - (b.jobs ?? Number.POSITIVE_INFINITY) || b.counted - a.counted,
    );
    return first === undefined ? [] : [first];
  });
}

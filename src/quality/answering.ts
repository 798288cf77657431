import { type Message, message } from "../job/index.ts";
import { holm, type Interval } from "../statistics/index.ts";
import type { JobObserved } from "./observation.ts";
import type { Answer, Asking, Cell, Column, ColumnKind, Label, Observed, QuestionId, Row, Signal, Table } from "./question.ts";

/** Fewer jobs than this and no question about jobs is answered with anything but its counts (own). */
export const LEAST_JOBS = 12;
/** Fewer events of one group than this and it is not compared with others (own). */
export const LEAST_EVENTS = 10;

export const label = (of: Label["of"], id: string, sheet?: string): Label =>
  sheet === undefined || sheet === "" ? { of, id } : { of, id, sheet };

export const cellOf = (value: number | string | undefined): Cell => (value === undefined ? {} : { value });
export const labelCell = (of: Label): Cell => ({ label: of });
export const withEnds = ({ value, low, high }: Interval): Cell => (Number.isFinite(value) ? { value, low, high } : {});
/** Values in the fixed unit of a kind. */
export const fixedCell = (value: number | undefined, kind: string): Cell => (value === undefined ? {} : { value: Math.round(value), kind });

export const row = (cells: readonly Cell[], note?: Row["note"]): Row => (note === undefined ? { cells } : { cells, note });

/** Columns written as 'id kind'. */
export const columns = (...written: readonly `${string} ${ColumnKind}`[]): readonly Column[] =>
  written.map((one) => {
    const [id = "", kind = "count"] = one.split(" ");
    return { id, kind: kind as ColumnKind };
  });

export const table = (id: string, cols: readonly Column[], rows: readonly Row[]): Table => ({ id, columns: cols, rows });

/** Jobs that the asking takes in: installed between its days; those not yet installed only where no days are asked for. */
export function jobsAsked({ jobs }: Observed, { from, to, today }: Asking): readonly JobObserved[] {
  if (from === undefined && to === undefined) return jobs.filter(({ installed }) => installed === undefined || installed <= today);
  return jobs.filter(({ installed }) => installed !== undefined && installed >= (from ?? "") && installed <= (to ?? today));
}

/** Share of a hundred, for sentences. */
export const percent = (share: number): number => Math.round(share * 1000) / 10;

/** What might stand out, each with its chance where nothing is. */
export interface Candidate extends Signal {
  /** Compared, but in the direction that is no matter for anybody: never a signal. */
  readonly quiet?: boolean;
}

/** Those that stand when the chance of any false one is held to alpha over all that were compared, the strongest first. */
export function standing(compared: readonly Candidate[], alpha: number): Pick<Answer, "signals" | "held"> {
  const stands = holm(
    compared.map(({ p }) => p),
    alpha,
  );
  const signals = compared
    .filter(({ quiet }, i) => stands[i] === true && quiet !== true)
    .sort((a, b) => a.p - b.p)
    .map(({ quiet: _, ...signal }) => signal);
  return { signals, held: { comparisons: compared.length, alpha, rule: compared.length > 0 ? "Holm" : "none" } };
}

const jobsCounted = (jobs: number): Message => message("counted.jobs", { jobs });

/** An answer with its fixed parts in place. Without `jobs`: it goes by none. */
export function answering(id: QuestionId, jobs: number | undefined, asking: Asking, parts: Partial<Answer>): Answer {
  const held = { comparisons: 0, alpha: asking.alpha, rule: "none" } as const;
  const { counted = [], ...more } = parts;
  return {
    id,
    decides: `${id}.decides`,
    says: [],
    signals: [],
    held,
    tables: [],
    pictures: [],
    ...more,
    counted: [...(jobs === undefined ? [] : [jobsCounted(jobs)]), ...counted],
  };
}

/** Too few jobs to tell anything from, and how many it would take at least. */
export const tooFewJobs = (jobs: number): { readonly tooFew?: Message } =>
  jobs < LEAST_JOBS ? { tooFew: message("too-few.jobs", { jobs, wanted: LEAST_JOBS }) } : {};

/** Things in groups, in the order in which the groups first appear. */
export function grouped<T>(things: readonly T[], keyOf: (thing: T) => string | undefined): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return groups;
}

export const sumOf = <T>(things: readonly T[], of: (thing: T) => number): number => things.reduce((sum, thing) => sum + of(thing), 0);

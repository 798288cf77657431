import { add, certain, rectangular, scale, type Uncertain, unfit, withSource } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { feet } from "../units/index.ts";
import type { Seen } from "./bores.ts";
import { type PipeSize, pipeSizes } from "./pipe-sizes.ts";

export const fittingKinds = ["90 ell", "45 ell", "tee, run", "tee, branch", "gate valve", "adapter", "swing check valve"] as const;
export type FittingKind = (typeof fittingKinds)[number];

export interface FittingTable {
  readonly source: string;
  readonly seen: Seen;
  /** Another way of counting: shown beside the others, never used and never part of their spread. */
  readonly apart?: true;
  /** Equivalent length of plain pipe, feet, by size; sizes in the order of `pipeSizes`, null where the table has none. */
  readonly feet: Readonly<Partial<Record<FittingKind, readonly (number | null)[]>>>;
}

const only = (sizes: Readonly<Partial<Record<PipeSize, number>>>): readonly (number | null)[] =>
  pipeSizes.map((size) => sizes[size] ?? null);

/** Published equivalent lengths for plastic, in the order in which a figure is taken from them. They disagree; all are shown. */
export const fittingTables: Readonly<Record<string, FittingTable>> = {
  "PVC and CPVC": {
    source: "A PVC and CPVC table of equivalent lengths on a document site; 3 and 4 in columns told apart by their order",
    seen: "seen",
    feet: {
      "90 ell": [1.5, 2, 2.5, 3.8, 4, 5.7, 6.9, 7.9, 12],
      "45 ell": [0.8, 1.1, 1.4, 1.8, 2.1, 2.6, 3.1, 4, 5.1],
      "gate valve": [0.3, 0.4, 0.6, 0.8, 1, 1.5, 2, 3, null],
      "tee, run": [1, 1.4, 1.7, 2.3, 2.7, 4.3, 5.1, 6.2, 8.3],
      "tee, branch": [4, 5, 6, 7, 8, 12, 15, 16, 22],
      adapter: [1, 1.5, 2, 2.8, 3.5, 4.5, 5.5, 6.5, 9],
    },
  },
  irrigation: {
    source: "An irrigation calculator's table of fittings and valves",
    seen: "seen",
    feet: {
      "tee, run": only({ "1-1/2": 2.7, "2": 4 }),
      "tee, branch": only({ "1-1/2": 8.4, "2": 12 }),
      "90 ell": only({ "1-1/2": 4, "2": 5.7, "4": 11.4 }),
      "45 ell": only({ "1-1/2": 2.1, "2": 2.6 }),
      "swing check valve": only({ "1-1/2": 13.4, "2": 17.2 }),
      "gate valve": only({ "1-1/2": 1.1, "2": 1.4 }),
    },
  },
  "PVC trade page": {
    source: "A PVC trade page's friction loss of fittings",
    seen: "seen",
    feet: {
      "90 ell": only({ "1-1/2": 4, "2": 6 }),
      "45 ell": only({ "1-1/2": 2, "2": 2.5 }),
      "tee, run": only({ "1-1/2": 2.7, "2": 4.3 }),
      "tee, branch": only({ "1-1/2": 8, "2": 12 }),
    },
  },
  "plumbing code allowance": {
    source: "Illinois Administrative Code 77-890 appendix A table Q, allowance for wrought fittings",
    seen: "seen",
    apart: true,
    feet: { "90 ell": only({ "1-1/2": 2, "2": 2 }) },
  },
};

export interface PublishedLength {
  readonly table: string;
  readonly source: string;
  /** Metres. */
  readonly length: number;
  readonly apart: boolean;
}

/** What every table says of one fitting, metres, in the tables' order; empty where none has it. */
export function publishedLengths(kind: FittingKind, size: PipeSize): readonly PublishedLength[] {
  return Object.entries(fittingTables).flatMap(([table, { source, apart, feet: rows }]) => {
    const found = rows[kind]?.[pipeSizes.indexOf(size)];
    return typeof found === "number" ? [{ table, source, length: feet(found), apart: apart === true }] : [];
  });
}

/** Own: figures in such tables are rounded from few tests; where they agree they are still not known better than to a fifth. */
const LEAST_SHARE = 0.2;

/**
 * Equivalent length of one fitting, metres: the first table's figure; half-width the largest distance to another table's, at least
 * a fifth of it (own). Two fittings of one kind share their doubt. Refuses a fitting that no table has at that size.
 */
export function equivalentLength(kind: FittingKind, size: PipeSize): Outcome<Uncertain> {
  const [first, ...others] = publishedLengths(kind, size).filter(({ apart }) => !apart);
  if (first === undefined) return refuse("fitting-length-unknown", "fittings", { fitting: kind, size });
  const spread = Math.max(LEAST_SHARE * first.length, ...others.map(({ length }) => Math.abs(length - first.length)));
  return ok(withSource(certain(first.length), `fitting:${kind} ${size}`, rectangular(spread)));
}

export interface FittingCount {
  readonly kind: FittingKind;
  readonly count: number;
}

/** Pipe plus its fittings as equivalent length, metres. Counts are whole and not negative. */
export function equivalentRun(pipe: Uncertain, fittings: readonly FittingCount[], size: PipeSize): Outcome<Uncertain> {
  const bad = unfit("fittings", "not negative", { pipe });
  if (bad) return bad;
  let sum = pipe;
  for (const { kind, count } of fittings) {
    const wrong = unfit("fittings", "not negative", { [kind]: count });
    if (wrong) return wrong;
    if (!Number.isInteger(count)) return refuse("count-not-whole", `fittings/${kind}`, { found: count });
    const each = equivalentLength(kind, size);
    if (!each.ok) return each;
    sum = add(sum, scale(each.value, count));
  }
  return ok(sum);
}

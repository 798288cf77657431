import type { Seen } from "./bores.ts";

const MINUTE = 1;
const HOUR = 60;
const DAY = 1440;

/** A range of nominal sizes, inches, both ends in it. */
export interface SizeRange {
  readonly from: number;
  readonly to: number;
}

/** One block of a table: minutes by band (warmest first) and size range, up to a pressure by size range. */
export interface CureBlock {
  /** psi, by size range; 0 where the block has no such size, infinite where the page names no upper end. */
  readonly upToPsi: readonly number[];
  readonly minutes: readonly (readonly number[])[];
}

export interface CementTable {
  readonly title: string;
  readonly source: string;
  readonly seen: Seen;
  /** Temperatures, °F, warmest band first. */
  readonly bands: readonly { readonly from: number; readonly to: number }[];
  readonly sizes: readonly SizeRange[];
  /** Minutes until it may be handled; absent where the page gives none. */
  readonly set?: readonly (readonly number[])[];
  /** Minutes until water under pressure, lowest pressure first. */
  readonly cure: readonly CureBlock[];
  /** Relative humidity above which all times grow, share; where the page only says damp or humid, the 60 % of the other two. */
  readonly humidAbove: number;
  readonly humidFactor: { readonly numerator: number; readonly denominator: number };
}

const humid = { humidAbove: 0.6, humidFactor: { numerator: 3, denominator: 2 } } as const;

const perHour = (rows: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  rows.map((row) => row.map((hours) => hours * HOUR));

/** Above 180 (160) psi tables A and B print the same hours, by band and size range. */
const highPressure = perHour([
  [6, 12, 24],
  [12, 24, 48],
  [48, 96, 192],
]);
const withNothingMore = (rows: readonly (readonly number[])[], more: readonly number[]): readonly (readonly number[])[] =>
  rows.map((row) => [...row, ...more]);

/**
 * Three published tables for rigid PVC. They disagree: on low-pressure cure at 60 to 100 °F by a factor of 4, on set by 7 to 12. All
 * three are for pressure pipe; a buried basin's line runs at a few psi. The text of ASTM D2855 itself was not seen. The can rules.
 */
export const cementTables = {
  A: {
    title: "A pipe maker's technical manual",
    source: "PVC pipe maker's technical manual, page 96, set and cure schedule",
    seen: "seen",
    bands: [
      { from: 60, to: 100 },
      { from: 40, to: 60 },
      { from: 0, to: 40 },
    ],
    sizes: [
      { from: 0.5, to: 1.25 },
      { from: 1.5, to: 3 },
      { from: 4, to: 8 },
      { from: 10, to: 16 },
    ],
    set: [
      [15 * MINUTE, 30 * MINUTE, HOUR, 2 * HOUR],
      [HOUR, 2 * HOUR, 4 * HOUR, 8 * HOUR],
      [3 * HOUR, 6 * HOUR, 12 * HOUR, 24 * HOUR],
    ],
    cure: [
      {
        upToPsi: [180, 180, 180, 100],
        minutes: [
          [HOUR, 2 * HOUR, 6 * HOUR, 24 * HOUR],
          [2 * HOUR, 4 * HOUR, 12 * HOUR, 48 * HOUR],
          [8 * HOUR, 16 * HOUR, 48 * HOUR, 8 * DAY],
        ],
      },
      { upToPsi: [370, 315, 315, 0], minutes: withNothingMore(highPressure, [0]) },
    ],
    ...humid,
  },
  B: {
    title: "A solvent cement maker's schedule",
    source: "Solvent cement maker's product application guide, set and cure schedule",
    seen: "seen",
    bands: [
      { from: 60, to: 100 },
      { from: 40, to: 60 },
      { from: 0, to: 40 },
    ],
    sizes: [
      { from: 0.5, to: 1.25 },
      { from: 1.5, to: 2 },
      { from: 2.5, to: 8 },
      { from: 10, to: 15 },
      { from: 15, to: Number.POSITIVE_INFINITY },
    ],
    set: [
      [2 * MINUTE, 5 * MINUTE, 30 * MINUTE, 2 * HOUR, 4 * HOUR],
      [5 * MINUTE, 10 * MINUTE, 2 * HOUR, 8 * HOUR, 16 * HOUR],
      [10 * MINUTE, 15 * MINUTE, 12 * HOUR, 24 * HOUR, 48 * HOUR],
    ],
    cure: [
      {
        upToPsi: [160, 160, 160, 100, 100],
        minutes: [
          [15 * MINUTE, 30 * MINUTE, 90 * MINUTE, 2 * DAY, 3 * DAY],
          [20 * MINUTE, 45 * MINUTE, 4 * HOUR, 4 * DAY, 6 * DAY],
          [30 * MINUTE, HOUR, 72 * HOUR, 8 * DAY, 14 * DAY],
        ],
      },
      { upToPsi: [370, 370, 370, 0, 0], minutes: withNothingMore(highPressure, [0, 0]) },
    ],
    ...humid,
  },
  C: {
    title: "Another cement maker's leaflet",
    source: "Cement maker's leaflet, average joint cure times for PVC and CPVC, four bands",
    seen: "seen",
    bands: [
      { from: 60, to: 100 },
      { from: 40, to: 60 },
      { from: 20, to: 40 },
      { from: 0, to: 20 },
    ],
    sizes: [
      { from: 0.5, to: 1.25 },
      { from: 1.5, to: 3 },
      { from: 4, to: 5 },
      { from: 6, to: 8 },
    ],
    cure: [
      {
        upToPsi: [180, 180, 180, 180],
        minutes: perHour([
          [1, 2, 6, 8],
          [2, 4, 12, 16],
          [6, 12, 36, 72],
          [8, 16, 48, 96],
        ]),
      },
      {
        upToPsi: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0],
        minutes: perHour([
          [6, 12, 18, 0],
          [12, 24, 36, 0],
          [36, 72, 96, 0],
          [48, 96, 192, 0],
        ]),
      },
    ],
    ...humid,
  },
} as const satisfies Readonly<Record<string, CementTable>>;
export type CementTableName = keyof typeof cementTables;
export const DEFAULT_CEMENT_TABLE: CementTableName = "A";

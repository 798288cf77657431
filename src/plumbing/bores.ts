import { certain, rectangular, type Uncertain, withSource } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { inches, type Metres } from "../units/index.ts";
import type { PipeSize } from "./pipe-sizes.ts";

/** Where a table was read: `quoted` on a page that quotes it, `worked out` from figures named in the source. */
export type Seen = "seen" | "quoted" | "worked out" | "from memory";

export interface BoreTable {
  readonly source: string;
  readonly seen: Seen;
  /** Inside diameter, inches. */
  readonly bores: Readonly<Partial<Record<PipeSize, number>>>;
}

/**
 * Outside diameter and wall of Schedule 40 pipe. Diameters in inches, ASTM D1785 table 1 (quoted); wall in millimetres, least and
 * greatest, ASTM D1785 (quoted); 2-1/2 in diameter from memory.
 */
export const schedule40 = {
  "1/2": { outside: 0.84, outsideTolerance: 0.004, wall: [2.77, 3.28] },
  "3/4": { outside: 1.05, outsideTolerance: 0.004, wall: [2.87, 3.38] },
  "1": { outside: 1.315, outsideTolerance: 0.005, wall: [3.38, 3.89] },
  "1-1/4": { outside: 1.66, outsideTolerance: 0.005, wall: [3.56, 4.07] },
  "1-1/2": { outside: 1.9, outsideTolerance: 0.006, wall: [3.68, 4.19] },
  "2": { outside: 2.375, outsideTolerance: 0.006, wall: [3.91, 4.42] },
  "2-1/2": { outside: 2.875, outsideTolerance: 0.007, wall: [5.16, 5.77] },
  "3": { outside: 3.5, outsideTolerance: 0.008, wall: [5.49, 6.15] },
  "4": { outside: 4.5, outsideTolerance: 0.009, wall: [6.02, 6.73] },
} as const satisfies Readonly<Record<PipeSize, { outside: number; outsideTolerance: number; wall: readonly [number, number] }>>;

/**
 * Bores by schedule. The minimum-wall bore (1.610, 2.067) is what friction tables print and is the widest that a pipe may be; pipe
 * as it is made has the average wall (1.590, 2.047) and loses 6.3 and 4.8 % more head. Two makers' tables of the average differ by
 * 0.002 to 0.006 in; both are kept.
 */
export const boreTables = {
  "schedule 40, average wall": {
    source: "A pipe extruder's dimension table: average walls 0.155, 0.164, 0.229, 0.251 in; other sizes the middle of ASTM D1785's walls",
    seen: "worked out",
    bores: {
      "1/2": 0.602,
      "3/4": 0.804,
      "1": 1.029,
      "1-1/4": 1.36,
      "1-1/2": 1.59,
      "2": 2.047,
      "2-1/2": 2.445,
      "3": 3.042,
      "4": 3.998,
    },
  },
  "schedule 40, average wall, second table": {
    source: "An engineer's page of PVC pipe data, column 'average I.D.'",
    seen: "seen",
    bores: {
      "1/2": 0.608,
      "3/4": 0.81,
      "1": 1.033,
      "1-1/4": 1.364,
      "1-1/2": 1.592,
      "2": 2.049,
      "2-1/2": 2.445,
      "3": 3.042,
      "4": 3.998,
    },
  },
  "schedule 40, minimum wall": {
    source: "ASTM D1785 (quoted): outside diameter less two minimum walls; 2-1/2 in from memory",
    seen: "worked out",
    bores: {
      "1/2": 0.622,
      "3/4": 0.824,
      "1": 1.049,
      "1-1/4": 1.38,
      "1-1/2": 1.61,
      "2": 2.067,
      "2-1/2": 2.469,
      "3": 3.068,
      "4": 4.026,
    },
  },
  "schedule 80, average wall": {
    source: "An engineer's page of PVC pipe data, column 'average I.D.'",
    seen: "seen",
    bores: {
      "1/2": 0.528,
      "3/4": 0.724,
      "1": 0.935,
      "1-1/4": 1.256,
      "1-1/2": 1.476,
      "2": 1.913,
      "2-1/2": 2.289,
      "3": 2.864,
      "4": 3.786,
    },
  },
  "class 160": {
    source: "A university course's friction table for PVC class 160 pipe",
    seen: "seen",
    bores: { "1": 1.195, "2": 2.193, "3": 3.23 },
  },
} as const satisfies Record<string, BoreTable>;
export type BoreTableName = keyof typeof boreTables;
export const DEFAULT_BORE_TABLE: BoreTableName = "schedule 40, average wall";

/** Half-width of a bore, metres: D1785 lets each wall of Schedule 40 range by greatest less least; taken for the other tables too (own). */
function boreHalfWidth(size: PipeSize): number {
  const { outsideTolerance, wall } = schedule40[size];
  return (wall[1] - wall[0]) / 1000 + inches(outsideTolerance);
}

/** Inside diameter of rigid pipe, metres, with the doubt that the standard's own tolerances leave. Refuses a size that the table lacks. */
export function pipeBore(size: PipeSize, table: BoreTableName = DEFAULT_BORE_TABLE): Outcome<Uncertain> {
  const bore = (boreTables[table] as BoreTable).bores[size];
  if (bore === undefined) return refuse("pipe-size-unknown", "pipe/size", { found: size });
  return ok(withSource(certain(inches(bore)), `bore:${size}`, rectangular(boreHalfWidth(size))));
}

/** Bore that one was told or measured on a cut end, metres ± half-width: flexible pipe has no schedule that its bore follows. */
export const boreAsMeasured = (bore: Metres, halfWidth: Metres): Uncertain =>
  withSource(certain(bore), "bore:measured", rectangular(halfWidth));

import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { type CementTableName, jointTimes, type PipeSize } from "#core/plumbing/index.ts";

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
const PSI = 6894.757;

/** Hours until handled, hours until water. */
function hours(
  table: CementTableName,
  size: PipeSize,
  fahrenheit: number,
  more: { humid?: boolean; psi?: number } = {},
): readonly [number, number] {
  const times = jointTimes({
    kind: "rigid PVC",
    size,
    coldest: certain(celsius(fahrenheit)),
    humidity: more.humid === true ? "humid" : "dry",
    pressure: (more.psi ?? 0) * PSI,
    table,
  });
  if (!times.ok) throw new Error(times.refusal.code);
  return [times.value.set / 3_600_000, times.value.cure / 3_600_000];
}

describe("table A, a PVC pipe maker's technical manual page 96 (SEEN): set and cure up to 180 psi, hours", () => {
  test.each([
    ["1-1/4", 70, 0.25, 1],
    ["1-1/2", 70, 0.5, 2],
    ["2", 70, 0.5, 2],
    ["3", 70, 0.5, 2],
    ["4", 70, 1, 6],
    ["1", 50, 1, 2],
    ["2", 50, 2, 4],
    ["4", 50, 4, 12],
    ["1-1/4", 30, 3, 8],
    ["2", 30, 6, 16],
    ["4", 30, 12, 48],
  ] as const)("%s in at %i °F: %f and %f", (size, fahrenheit, set, cure) => {
    expect(hours("A", size, fahrenheit)).toEqual([set, cure]);
  });

  test("above 180 psi: 6, 12, 24 h; 12, 24, 48 h; 48 h, 96 h, 8 d by band and size", () => {
    const high = (fahrenheit: number) => (["1", "2", "4"] as const).map((size) => hours("A", size, fahrenheit, { psi: 200 })[1]);
    expect([high(70), high(50), high(30)]).toEqual([
      [6, 12, 24],
      [12, 24, 48],
      [48, 96, 192],
    ]);
  });
});

describe("table B, a solvent cement maker's application guide (SEEN): set and cure up to 160 psi, hours", () => {
  test.each([
    ["1", 70, 2 / 60, 0.25],
    ["1-1/2", 70, 5 / 60, 0.5],
    ["2", 50, 10 / 60, 0.75],
    ["3", 70, 0.5, 1.5],
    ["2-1/2", 50, 2, 4],
    ["2", 30, 0.25, 1],
    ["3", 30, 12, 72],
  ] as const)("%s in at %i °F: %f and %f", (size, fahrenheit, set, cure) => {
    const [found, cured] = hours("B", size, fahrenheit);
    expect(found).toBeCloseTo(set, 12);
    expect(cured).toBe(cure);
  });
});

describe("table C, another cement maker's leaflet (SEEN): cure up to 180 psi in four bands, hours", () => {
  test.each([
    ["1", [1, 2, 6, 8]],
    ["2", [2, 4, 12, 16]],
    ["4", [6, 12, 36, 48]],
  ] as const)("%s in at 70, 50, 30, 10 °F: %j", (size, cures) => {
    expect([70, 50, 30, 10].map((fahrenheit) => hours("C", size, fahrenheit)[1])).toEqual(cures);
  });
  test("above 180 psi, 1-1/2 to 3 in: 12, 24, 72, 96 h", () => {
    expect([70, 50, 30, 10].map((fahrenheit) => hours("C", "2", fahrenheit, { psi: 200 })[1])).toEqual([12, 24, 72, 96]);
  });
});

describe("where the three agree and where they do not", () => {
  test("A and C: 1-1/2 in cures in 2 h at 70 and 4 h at 50 °F, half as much again when humid (both SEEN)", () => {
    for (const table of ["A", "C"] as const) {
      expect([hours(table, "1-1/2", 70)[1], hours(table, "1-1/2", 50)[1]]).toEqual([2, 4]);
      expect([hours(table, "1-1/2", 70, { humid: true })[1], hours(table, "1-1/2", 50, { humid: true })[1]]).toEqual([3, 6]);
    }
  });
  test("A against B at 70 °F: cure 4 times, set 6 to 7.5 times as long, for 1-1/4 and 1-1/2 in", () => {
    for (const [size, set] of [
      ["1-1/4", 7.5],
      ["1-1/2", 6],
    ] as const) {
      const [a, b] = [hours("A", size, 70), hours("B", size, 70)];
      expect(a[1] / b[1]).toBe(4);
      expect(a[0] / b[0]).toBeCloseTo(set, 9);
    }
  });
  test("3 in falls with 1-1/2 and 2 in by A and C, and not by B", () => {
    expect(hours("A", "3", 70)).toEqual(hours("A", "2", 70));
    expect(hours("C", "3", 70)).toEqual(hours("C", "2", 70));
    expect(hours("B", "3", 70)[1]).toBe(3 * hours("B", "2", 70)[1]);
  });
});

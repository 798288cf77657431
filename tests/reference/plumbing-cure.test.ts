import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { type CementTableName, cementTables, jointTimes, type PipeSize } from "#core/plumbing/index.ts";
import { byHand, disagreement, published, same, source } from "./checked.ts";

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

const manual = source("PVC pipe maker's technical manual", "page 96, set and cure (table A)", "seen");
const guide = source("Solvent cement maker's product application guide", "set and cure schedule (table B)", "seen");
const leaflet = source("Another cement maker's leaflet", "average joint cure times, four bands (table C)", "seen");
const exact = { digits: 9 } as const;

describe("the tables cell by cell, hours, warmest band first", () => {
  const inHours = (rows: readonly (readonly number[])[] | undefined) => rows?.map((row) => row.map((minutes) => minutes / 60));

  test("A", () => {
    const { set, cure, bands, sizes } = cementTables.A;
    same(
      manual,
      "bands, °F, and sizes, in",
      [bands, sizes],
      [
        [
          { from: 60, to: 100 },
          { from: 40, to: 60 },
          { from: 0, to: 40 },
        ],
        [
          { from: 0.5, to: 1.25 },
          { from: 1.5, to: 3 },
          { from: 4, to: 8 },
          { from: 10, to: 16 },
        ],
      ],
    );
    same(manual, "set, h", inHours(set), [
      [0.25, 0.5, 1, 2],
      [1, 2, 4, 8],
      [3, 6, 12, 24],
    ]);
    same(manual, "cure up to 180 psi (10 to 16 in up to 100), h", inHours(cure[0].minutes), [
      [1, 2, 6, 24],
      [2, 4, 12, 48],
      [8, 16, 48, 192],
    ]);
    same(
      manual,
      "cure above, h",
      inHours(cure[1].minutes)?.map((row) => row.slice(0, 3)),
      [
        [6, 12, 24],
        [12, 24, 48],
        [48, 96, 192],
      ],
    );
  });

  test("B", () => {
    const { set, cure } = cementTables.B;
    const fromMinutes = (rows: readonly (readonly number[])[]) => rows.map((row) => row.map((minutes) => minutes / 60));
    same(
      guide,
      "set, h",
      inHours(set),
      fromMinutes([
        [2, 5, 30, 120, 240],
        [5, 10, 120, 480, 960],
        [10, 15, 720, 1440, 2880],
      ]),
    );
    same(guide, "cure up to 160 psi (10 in and more up to 100), h", inHours(cure[0].minutes), [
      [0.25, 0.5, 1.5, 48, 72],
      [20 / 60, 0.75, 4, 96, 144],
      [0.5, 1, 72, 192, 336],
    ]);
    same(
      guide,
      "cure above, h",
      inHours(cure[1].minutes)?.map((row) => row.slice(0, 3)),
      [
        [6, 12, 24],
        [12, 24, 48],
        [48, 96, 192],
      ],
    );
  });

  test("C", () => {
    const [low, high] = cementTables.C.cure;
    const bySize = (rows: readonly (readonly number[])[] | undefined, range: number) => inHours(rows)?.map((row) => row[range]);
    same(
      leaflet,
      "cure up to 180 psi, h",
      [0, 1, 2, 3].map((range) => bySize(low.minutes, range)),
      [
        [1, 2, 6, 8],
        [2, 4, 12, 16],
        [6, 12, 36, 48],
        [8, 16, 72, 96],
      ],
    );
    same(
      leaflet,
      "cure above 180 psi, h",
      [0, 1, 2].map((range) => bySize(high.minutes, range)),
      [
        [6, 12, 36, 48],
        [12, 24, 72, 96],
        [18, 36, 96, 192],
      ],
    );
  });

  test("half as much again in damp weather, above 60 % humidity", () => {
    for (const [from, name] of [[manual, "A"] as const, [guide, "B"] as const, [leaflet, "C"] as const]) {
      const { humidFactor, humidAbove } = cementTables[name];
      published(from, "factor in damp weather", humidFactor.numerator / humidFactor.denominator, 1.5, exact);
      if (name !== "B") published(from, "humidity above which it holds", humidAbove, 0.6, exact);
    }
  });
});

describe("as answered for a joint", () => {
  test.each([
    ["A", "1-1/4", 70, 0.25, 1],
    ["A", "1-1/2", 70, 0.5, 2],
    ["A", "2", 70, 0.5, 2],
    ["A", "3", 70, 0.5, 2],
    ["A", "4", 70, 1, 6],
    ["A", "1", 50, 1, 2],
    ["A", "2", 50, 2, 4],
    ["A", "4", 50, 4, 12],
    ["A", "1-1/4", 30, 3, 8],
    ["A", "2", 30, 6, 16],
    ["A", "4", 30, 12, 48],
    ["B", "1", 70, 2 / 60, 0.25],
    ["B", "1-1/2", 70, 5 / 60, 0.5],
    ["B", "2", 50, 10 / 60, 0.75],
    ["B", "3", 70, 0.5, 1.5],
    ["B", "2-1/2", 50, 2, 4],
    ["B", "2", 30, 0.25, 1],
    ["B", "3", 30, 12, 72],
  ] as const)("table %s, %s in at %i °F: set %f, cure %f h", (table, size, fahrenheit, set, cure) => {
    published(table === "A" ? manual : guide, "set and cure of a joint, h", hours(table, size, fahrenheit), [set, cure], exact);
  });

  test.each([
    ["1", [1, 2, 6, 8]],
    ["2", [2, 4, 12, 16]],
    ["4", [6, 12, 36, 48]],
  ] as const)("table C, %s in at 70, 50, 30, 10 °F: %j h", (size, cures) => {
    const found = [70, 50, 30, 10].map((fahrenheit) => hours("C", size, fahrenheit)[1]);
    published(leaflet, "cure of a joint, h", found, cures, exact);
  });

  test("above 180 psi", () => {
    const high = (["1", "2", "4"] as const).map((size) => hours("A", size, 50, { psi: 200 })[1]);
    published(manual, "cure of a joint above 180 psi, h", high, [12, 24, 48], exact);
    const two = [70, 50, 30, 10].map((fahrenheit) => hours("C", "2", fahrenheit, { psi: 200 })[1]);
    published(leaflet, "cure of a joint above 180 psi, h", two, [12, 24, 72, 96], exact);
  });
});

describe("where the three agree and where they do not", () => {
  test("A and C: 1-1/2 in cures in 2 h at 70 and 4 h at 50 °F, half as much again when humid", () => {
    for (const [from, table] of [[manual, "A"] as const, [leaflet, "C"] as const]) {
      published(from, "cure of 1-1/2 in at 70 and 50 °F, h", [hours(table, "1-1/2", 70)[1], hours(table, "1-1/2", 50)[1]], [2, 4], exact);
      const humid = [70, 50].map((fahrenheit) => hours(table, "1-1/2", fahrenheit, { humid: true })[1]);
      published(byHand("× 1.5 when humid"), "cure of 1-1/2 in at 70 and 50 °F, h", humid, [3, 6], exact);
    }
  });

  test("A against B at 70 °F: cure 4 times, set 6 to 7.5 times as long; 3 in falls in other bands", () => {
    const ratio = byHand("table A over table B");
    for (const [size, set] of [
      ["1-1/4", 7.5],
      ["1-1/2", 6],
    ] as const) {
      const [a, b] = [hours("A", size, 70), hours("B", size, 70)];
      published(ratio, "set and cure at 70 °F", [a[0] / b[0], a[1] / b[1]], [set, 4], exact);
    }
    disagreement(
      "hours until water in a 1-1/2 in joint at 70 °F, low pressure",
      [
        [manual, hours("A", "1-1/2", 70)[1]],
        [leaflet, hours("C", "1-1/2", 70)[1]],
        [guide, hours("B", "1-1/2", 70)[1]],
      ],
      "table A unless the company chooses another; the can goes before all",
    );
    disagreement(
      "hours until water in a 3 in joint at 30 °F, low pressure",
      [
        [manual, hours("A", "3", 30)[1]],
        [leaflet, hours("C", "3", 30)[1]],
        [guide, hours("B", "3", 30)[1]],
      ],
      "table A unless the company chooses another; the can goes before all",
    );
  });
});

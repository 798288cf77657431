import { describe, expect, test } from "vitest";
import type { Uncertain } from "#core/doubt/index.ts";
import * as geometry from "#core/geometry/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import * as plumbing from "#core/plumbing/index.ts";
import * as power from "#core/power/index.ts";
import * as water from "#core/water/index.ts";
import { fao56Rows } from "./fao56.ts";
import { geometryRows } from "./geometry.ts";
import { plumbingRows } from "./plumbing.ts";
import { powerRows } from "./power.ts";
import { certain, parts, type Refusing, type Rows } from "./rows.ts";
import { waterRows } from "./water.ts";

const NOT_NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

const rooms = { water, "water.fao56": water.fao56, plumbing, power, geometry } as const;
const rows: Readonly<Record<keyof typeof rooms, Rows>> = {
  water: waterRows,
  "water.fao56": fao56Rows,
  plumbing: plumbingRows,
  power: powerRows,
  geometry: geometryRows,
};
const functionsOf = (room: object): readonly string[] =>
  Object.entries(room)
    .filter(([, value]) => typeof value === "function")
    .map(([name]) => name);

/** The call with the row's own figures, one of them exchanged; and whether that one was read with its doubt. */
function callWith({ figures, call }: Refusing, exchanged?: string, by?: number | Uncertain) {
  let withDoubt = false;
  const givenFor = (name: string): number | Uncertain =>
    name === exchanged && by !== undefined ? by : (figures[name]?.value ?? Number.NaN);
  const outcome = call(
    (name) => {
      if (name === exchanged) withDoubt = true;
      const value = givenFor(name);
      return typeof value === "number" ? certain(value) : value;
    },
    (name) => {
      const value = givenFor(name);
      return typeof value === "number" ? value : value.value;
    },
  );
  return { outcome, withDoubt };
}
const said = (outcome: Outcome<unknown>): string => (outcome.ok ? "taken" : `${outcome.refusal.code} at ${outcome.refusal.place}`);

const every = (Object.keys(rooms) as (keyof typeof rooms)[]).flatMap((room) =>
  Object.entries(rows[room]).map(([name, row]) => ({ name: `${room} ${name}`, row })),
);
const figures = every.flatMap(({ name, row }) =>
  row.kind === "refuses" ? Object.entries(row.figures).map(([figure, wanted]) => ({ name, row, figure, ...wanted })) : [],
);

describe("every function of the trade has its row", () => {
  test.each(Object.keys(rooms) as (keyof typeof rooms)[])("%s: a function without one, or a row without its function, fails", (room) => {
    expect(Object.keys(rows[room]).sort()).toEqual([...functionsOf(rooms[room])].sort());
  });

  test("a row that takes no number says why", () => {
    for (const { row } of every) if (row.kind === "exempt") expect(row.because.length).toBeGreaterThan(20);
  });
});

describe("figures that are no numbers, or of a size that makes no sense", () => {
  test.each(every)("$name takes what is in order", ({ row }) => {
    if (row.kind === "refuses") expect(said(callWith(row).outcome)).toBe("taken");
    if (row.kind === "carries") for (const x of row.call(0.5)) expect(typeof x === "number" ? [x] : parts(x)).toSatisfy(allFinite);
  });

  test.each(figures)("$name: $figure", ({ row, figure, value, wanted, place }) => {
    for (const odd of NOT_NUMBERS) expect(said(callWith(row, figure, odd).outcome), `${odd}`).toBe(`number-not-finite at ${place}`);
    const by = (number: number): string => said(callWith(row, figure, number).outcome);
    const [small, large] = [`number-not-positive at ${place}`, `reading-out-of-range at ${place}`];
    if (wanted === "positive") expect([by(0), by(-value)]).toEqual([small, small]);
    else if (wanted === "not negative") expect([by(0) === small, by(-value)]).toEqual([false, small]);
    else if (wanted === "finite") expect(by(-value)).not.toBe(small);
    else {
      const step = (wanted[1] - wanted[0]) * 1e-6;
      expect([by(wanted[0] - step), by(wanted[1] + step)]).toEqual([large, large]);
      expect([by(wanted[0]), by(wanted[1])]).not.toContain(large);
    }
  });

  test.each(figures)("$name: $figure with a doubt that is no number", ({ row, figure, value, place }) => {
    for (const odd of NOT_NUMBERS) {
      const { outcome, withDoubt } = callWith(row, figure, { value, parts: new Map([["x", odd]]) });
      if (withDoubt) expect(said(outcome), `${odd}`).toBe(`number-not-finite at ${place}`);
    }
  });

  test.each(every.filter(({ row }) => row.kind === "carries"))("$name hides none: none in, none out", ({ row }) => {
    if (row.kind !== "carries") return;
    for (const odd of NOT_NUMBERS) for (const x of row.call(odd)) expect(typeof x === "number" ? [x] : parts(x)).not.toSatisfy(allFinite);
  });
});

function allFinite(list: readonly number[]): boolean {
  return list.every(Number.isFinite);
}

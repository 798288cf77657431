import { expect, test } from "vitest";
import { remembered } from "#core/job/remembered.ts";

test("the same is worked out once, whatever object it comes in", () => {
  let runs = 0;
  const sum = remembered(2, (of: { readonly a: number; readonly b: readonly number[] }) => {
    runs += 1;
    return of.b.reduce((total, one) => total + one, of.a);
  });
  expect([sum({ a: 1, b: [2, 3] }), sum({ a: 1, b: [2, 3] }), sum({ a: 1, b: [2, 4] })]).toEqual([6, 6, 7]);
  expect(runs).toBe(2);
});

test("of more than it may remember the one that was asked longest ago is worked out anew", () => {
  const asked: number[] = [];
  const same = remembered(2, (n: number) => {
    asked.push(n);
    return n;
  });
  for (const n of [1, 2, 1, 3, 1, 2]) expect(same(n)).toBe(n);
  expect(asked).toEqual([1, 2, 3, 2]);
});

test("what JSON does not write is told apart by a key of one's own", () => {
  const rows = (_: string, value: unknown): unknown => (value instanceof Map ? [...value] : value);
  const sum = remembered(
    4,
    (parts: ReadonlyMap<string, number>) => [...parts.values()].reduce((total, one) => total + one, 0),
    (given) => JSON.stringify(given, rows),
  );
  expect([sum(new Map([["a", 1]])), sum(new Map([["a", 2]])), sum(new Map([["b", 5]]))]).toEqual([1, 2, 5]);
});

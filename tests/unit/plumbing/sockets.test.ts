import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, standardUncertainty } from "#core/doubt/index.ts";
import { insertion, socketStandards, witnessMark } from "#core/plumbing/index.ts";
import { inches, metres, toInches } from "#core/units/index.ts";
import { answer, codeOf, doubted, NOT_NUMBERS } from "./assumed.ts";

const asInches = (length: { value: number }): number => toInches(metres(length.value));
const socket = doubted(inches(1.25), "depth", inches(1 / 16));

describe("insertion by the witness mark", () => {
  test("mark at depth + 2 in; 2 in from mark to socket is all the way in, 2 3/8 is 3/8 short", () => {
    expect(asInches(answer(witnessMark(socket)))).toBeCloseTo(3.25, 12);
    const home = answer(insertion(socket, certain(inches(2))));
    expect([asInches(home.depth), asInches(home.short)]).toEqual([expect.closeTo(1.25, 12), expect.closeTo(0, 12)]);
    const short = answer(insertion(socket, certain(inches(2.375))));
    expect([asInches(short.depth), asInches(short.short)]).toEqual([expect.closeTo(0.875, 12), expect.closeTo(0.375, 12)]);
  });

  test("with the mark drawn from the depth its doubt leaves what is short alone; drawn elsewhere it does not", () => {
    const read = doubted(inches(2.25), "read", inches(1 / 16));
    expect(standardUncertainty(answer(insertion(socket, read)).short)).toBeCloseTo(standardUncertainty(read), 12);
    const elsewhere = answer(insertion(socket, read, doubted(inches(3.25), "mark", inches(1 / 16))));
    expect(standardUncertainty(elsewhere.short)).toBeCloseTo(Math.sqrt(3) * standardUncertainty(read), 12);
  });

  test("inserted and short together are the socket", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (depth, gap) => {
        const { depth: inserted, short } = answer(insertion(certain(inches(depth)), certain(inches(gap))));
        expect(inserted.value + short.value).toBeCloseTo(inches(depth), 12);
      }),
    );
  });

  test("refuses a mark that would leave the pipe outside, and senseless figures", () => {
    expect(codeOf(insertion(socket, certain(inches(3.3))))).toBe("socket-mark-beyond");
    expect(codeOf(insertion(certain(0), certain(inches(2))))).toBe("number-not-positive");
    expect(codeOf(insertion(socket, certain(-1)))).toBe("number-not-positive");
    expect(codeOf(witnessMark(certain(0)))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) {
      expect(codeOf(witnessMark(certain(odd)))).toBe("number-not-finite");
      expect(codeOf(insertion(socket, certain(odd)))).toBe("number-not-finite");
      expect(codeOf(socketStandards("2", certain(odd)))).toBe("number-not-finite");
    }
  });
});

describe("a measured depth beside the standards", () => {
  const beside = (depth: number) =>
    answer(socketStandards("2", doubted(inches(depth), "tape", inches(1 / 32)))).map(({ against }) => against);

  test("deeper than both, between, on the least, shallower than both", () => {
    expect(beside(1.75)).toEqual(["at least", "at least"]);
    expect(beside(1.25)).toEqual(["at least", "less"]);
    expect(beside(1.16)).toEqual(["too close to call", "less"]);
    expect(beside(0.75)).toEqual(["less", "less"]);
    expect(codeOf(socketStandards("2", certain(0)))).toBe("number-not-positive");
  });
});

import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonical, deepest, type Json } from "#core/ledger/index.ts";
import published from "../../samples/ledger/rfc8785.json" with { type: "json" };
import { anyText, taken } from "./sample.ts";

const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

describe("canonical form, RFC 8785", () => {
  it.each(published.vectors)("gives the published bytes of '$name'", ({ input, bytes, sha256: expected }) => {
    const text = taken(canonical(JSON.parse(input) as Json));
    expect(Buffer.byteLength(text, "utf8")).toBe(bytes);
    expect(sha256(text)).toBe(expected);
  });

  it.each(published.numbers)("writes the number of bits $bits as $text (RFC 8785 appendix B)", ({ bits, text }) => {
    expect(canonical(Buffer.from(bits, "hex").readDoubleBE())).toEqual({ ok: true, value: text });
  });

  it("orders keys by UTF-16 code units, not by code points (RFC 8785 3.2.3)", () => {
    expect(taken(canonical({ "\ufb33": 1, "\u{1f600}": 2 }))).toBe('{"\u{1f600}":2,"\ufb33":1}');
    expect(taken(canonical({ "\ue000": 1, "\u{10000}": 2 }))).toBe('{"\u{10000}":2,"\ue000":1}');
  });

  it("agrees with a second implementation on any JSON", () => {
    const { value } = fc.letrec<{ value: Json }>((tie) => ({
      value: fc.oneof(
        { maxDepth: 5 },
        fc.constantFrom<Json>(null, true, false, -0, 5e-324, 2 ** 53),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        anyText,
        fc.array(tie("value"), { maxLength: 4 }),
        fc.dictionary(anyText, tie("value"), { maxKeys: 4 }),
      ),
    }));
    fc.assert(
      fc.property(value, (json) => {
        const text = taken(canonical(json));
        expect(text).toBe(canonicalize(json));
        expect(taken(canonical(JSON.parse(text) as Json))).toBe(text);
      }),
    );
  });

  it.each([
    ["not a number", { a: [1, Number.NaN] }, "number-not-finite", "a/1"],
    ["infinite", -Infinity, "number-not-finite", ""],
    ["first half alone", ["\ud800"], "ledger-text-surrogate", "0"],
    ["second half alone", { a: "x\udc00" }, "ledger-text-surrogate", "a"],
    ["halves in the wrong order", "\udc00\ud800", "ledger-text-surrogate", ""],
    ["half a pair in a key", { a: { "\ud83d": 1 } }, "ledger-text-surrogate", "a"],
    ["undefined", { a: undefined }, "ledger-not-json", "a"],
    ["a hole", Array(3), "ledger-not-json", "0"],
    ["a date", { at: new Date(0) }, "ledger-not-json", "at"],
    ["a map", new Map(), "ledger-not-json", ""],
    ["a big integer", 1n, "ledger-not-json", ""],
  ])("refuses %s and says where", (_name, value, code, place) => {
    expect(canonical(value as unknown as Json)).toMatchObject({ ok: false, refusal: { code, place } });
  });

  it("refuses what is nested too deep, and a value that holds itself, instead of overflowing", () => {
    const nested = (levels: number): Json => JSON.parse("[".repeat(levels) + "]".repeat(levels)) as Json;
    expect(canonical(nested(deepest)).ok).toBe(true);
    expect(canonical(nested(deepest + 1))).toMatchObject({ refusal: { code: "ledger-too-deep" } });
    expect(canonical(nested(200_000))).toMatchObject({ refusal: { code: "ledger-too-deep" } });
    const itself: { self?: unknown } = {};
    itself.self = itself;
    expect(canonical(itself as Json)).toMatchObject({ refusal: { code: "ledger-too-deep" } });
  });
});

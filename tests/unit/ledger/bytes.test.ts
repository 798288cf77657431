import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromHex, isHex64, isWellFormed } from "../../../src/ledger/bytes.ts";

describe("bytes", () => {
  it("finds every lone surrogate, as ES2024 does", () => {
    const units = fc.array(fc.oneof(fc.integer({ min: 0xd700, max: 0xe0ff }), fc.integer({ min: 0, max: 0xffff })), { maxLength: 8 });
    fc.assert(
      fc.property(units, (list) => {
        const text = String.fromCharCode(...list);
        expect(isWellFormed(text)).toBe((text as unknown as { isWellFormed(): boolean }).isWellFormed());
      }),
    );
  });

  it("spells bytes in one way only", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), (bytes) => {
        expect(fromHex(Buffer.from(bytes).toString("hex"))).toEqual(new Uint8Array(bytes));
      }),
    );
    expect(isHex64("0".repeat(64))).toBe(true);
    for (const other of ["0".repeat(63), "A".repeat(64), `${"0".repeat(64)}\n`, "g".repeat(64), 0, null])
      expect(isHex64(other)).toBe(false);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromHex, isHex64, isWellFormed, toHex, utf8 } from "../../../src/ledger/bytes.ts";
import { anyText } from "./sample.ts";

describe("bytes", () => {
  it("encodes the examples of RFC 3629 section 7", () => {
    expect(toHex(utf8("A\u2262\u0391."))).toBe("41e289a2ce912e");
    expect(toHex(utf8("\ud55c\uad6d\uc5b4"))).toBe("ed959ceab5adec96b4");
    expect(toHex(utf8("\u65e5\u672c\u8a9e"))).toBe("e697a5e69cace8aa9e");
    expect(toHex(utf8("\ufeff\u{233b4}"))).toBe("efbbbff0a38eb4");
  });

  it("encodes any text as the platform does, first and last point of each length included", () => {
    const same = (text: string): void => {
      expect(toHex(utf8(text))).toBe(Buffer.from(text, "utf8").toString("hex"));
    };
    for (const point of [0, 0x7f, 0x80, 0x7ff, 0x800, 0xd7ff, 0xe000, 0xffff, 0x10000, 0x10ffff]) same(String.fromCodePoint(point));
    fc.assert(fc.property(anyText, same));
  });

  it("finds every lone surrogate, as ES2024 does", () => {
    const units = fc.array(fc.oneof(fc.integer({ min: 0xd700, max: 0xe0ff }), fc.integer({ min: 0, max: 0xffff })), { maxLength: 8 });
    fc.assert(
      fc.property(units, (list) => {
        const text = String.fromCharCode(...list);
        expect(isWellFormed(text)).toBe((text as unknown as { isWellFormed(): boolean }).isWellFormed());
      }),
    );
    expect(() => utf8("\ud800")).toThrow(RangeError);
  });

  it("spells bytes in one way only", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), (bytes) => {
        expect(fromHex(toHex(bytes))).toEqual(new Uint8Array(bytes));
      }),
    );
    expect(isHex64("0".repeat(64))).toBe(true);
    for (const other of ["0".repeat(63), "A".repeat(64), `${"0".repeat(64)}\n`, "g".repeat(64), 0, null])
      expect(isHex64(other)).toBe(false);
  });
});

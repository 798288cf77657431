import { describe, expect, it } from "vitest";
import { readFonts } from "#functions/print/fonts.ts";
import { printable } from "#functions/print/printable.ts";

const fonts = await readFonts();

describe("the record's fonts", () => {
  it("have what the trade types, in every weight", () => {
    const typed = "½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ⁄ ′ ″ ≤ ≥ ± − √ ≈ σ Δ Ω × ÷ ° · “ ” ‘ ’ – — … ñ Ñ á é í ó ú ü ¿ ¡ ß ø å Ł ž € # @ & < > { } \\";
    expect([...typed].filter((sign) => sign !== " " && !fonts.has(sign.codePointAt(0) as number))).toEqual([]);
  });

  it("lack these, as seen with a font reader", () => {
    for (const sign of ["→", "☐", "✓", "中", "😀"]) expect(fonts.has(sign.codePointAt(0) as number), sign).toBe(false);
  });
});

describe("printable", () => {
  it("writes what the fonts lack as its number, wherever it stands, and changes nothing else", () => {
    const model = { notes: ["pump → falls", "3⁄16″ \u{1f600}\ufe0f\n"], count: 3, nothing: null, inner: { ñ: "ñandú" } };
    expect(printable(model, fonts.has)).toEqual({
      notes: ["pump [U+2192] falls", "3⁄16″ [U+1F600]\ufe0f\n"],
      count: 3,
      nothing: null,
      inner: { ñ: "ñandú" },
    });
  });
});

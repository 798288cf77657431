import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isPlainlyShown, lookAlike, shownText } from "#core/text/index.ts";
import { html } from "#templates/html.ts";
import { damagedText, hostileSigns } from "../../helpers/damage.ts";

describe("typed text as it is shown", () => {
  it.each([
    ["a plain sentence", "Gravel came wet, 3⁄16″ below – “ok”", "Gravel came wet, 3⁄16″ below – “ok”"],
    ["Spanish", "Año nuevo: ¿quedó a plomo? Sí, ½ pulgada", "Año nuevo: ¿quedó a plomo? Sí, ½ pulgada"],
    ["letters that run from the right", "רחוב אלם 4 ــ شارع", "רחוב אלם 4 ــ شارع"],
    ["a decomposed letter", "Mun\u0303oz", "Mun\u0303oz"],
    ["a picture sign of several parts", "👩🏽‍🔧 ok", "👩🏽‍🔧 ok"],
    ["Persian with its joiner", "می‌خواهم", "می‌خواهم"],
    ["an override that turns the end of a name", "photo_\u202egpj.exe", "photo_gpj.exe"],
    ["isolates and embeddings", "a\u2066b\u2069c\u202ad\u202c", "abcd"],
    ["signs that show nothing", "El\u200bm\u00ad St\u2060reet\ufeff", "Elm Street"],
    ["joiners that join nothing", "1\u200d2 \u200c3", "12 3"],
    ["a flood of marks", `a${"\u0301".repeat(200)}b`, `a${"\u0301".repeat(4)}b`],
    ["tags", "x\u{e0041}\u{e007f}", "x"],
    ["half of a pair", "x\ud800y", "x\ufffdy"],
  ])("%s", (_, typed, shown) => {
    expect(shownText(typed)).toBe(shown);
    expect(isPlainlyShown(typed)).toBe(typed === shown);
    expect(html`<p>${typed}</p>`.text).toBe(`<p>${shown}</p>`);
  });

  it("shown twice it is the same, it is well formed, and no sign of another's choice is put in", () => {
    fc.assert(
      fc.property(damagedText(["Elm Street 4", "رخ El\u0301m", "👩🏽‍🔧"], hostileSigns, 8), (typed) => {
        const shown = shownText(typed);
        expect(shownText(shown)).toBe(shown);
        expect(shown.isWellFormed()).toBe(true);
        expect(shown).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u200b\ufeff\u{e0000}-\u{e007f}]/u);
        const left = [...typed.toWellFormed()];
        for (const sign of shown) expect(left.splice(0, left.indexOf(sign) + 1).at(-1)).toBe(sign);
      }),
      { numRuns: 1_000, seed: 1 },
    );
  });
});

describe("two numbers that look alike", () => {
  it.each([
    ["26-1", "26‑1"],
    ["26-1", "２６－１"],
    ["26-1", "26\u200b-1"],
    ["26-1", " 26–1 "],
    ["AB-7", "АВ-7"],
    ["AB-7", "ΑΒ-7"],
    ["Ñ 1", "N\u0303  1"],
    ["ﬁ 1", "fi 1"],
  ])("%j is %j", (one, other) => {
    expect(lookAlike(other)).toBe(lookAlike(one));
  });

  it("what a reader tells apart stays apart, and a plain number is itself", () => {
    const numbers = ["26-1", "26-01", "26 1", "AB-7", "Ab-7", "ÁB-7", "261", "2-61", "Ж-1", "26/1"];
    expect(new Set(numbers.map(lookAlike)).size).toBe(numbers.length);
    for (const plain of ["26-1", "AB-7", "Ñ 1"]) expect(lookAlike(plain)).toBe(plain);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cssString, html, trusted } from "#templates/html.ts";

describe("html", () => {
  it("escapes all that is put in, in text and in attributes", () => {
    expect(html`<p title="${`"'`}">${"<script>&</script>"}</p>`.text).toBe('<p title="&quot;&#39;">&lt;script&gt;&amp;&lt;/script&gt;</p>');
  });

  it("keeps what is HTML already, joins lists and leaves out nothing-at-all", () => {
    expect(html`<ul>${["a", "b"].map((item) => html`<li>${item}</li>`)}</ul>${undefined}${null}${false}${0}`.text).toBe(
      "<ul><li>a</li><li>b</li></ul>0",
    );
    expect(html`${trusted("<hr>")}`.text).toBe("<hr>");
  });

  it("shows a control or half a pair as the sign for 'not a character'", () => {
    expect(html`${"a\u0000b\u001b\ud800c"}`.text).toBe("a\ufffdb\ufffd\ufffdc");
    expect(html`${"😀\n"}`.text).toBe("😀\n");
  });

  it("lets no text end the element or the attribute that it stands in", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary-ascii" }), (text) => {
        expect(html`${text}`.text).not.toMatch(/[<>"']/);
      }),
    );
  });
});

describe("cssString", () => {
  it("escapes what could end the string, the rule or the style element", () => {
    expect(cssString('a"b\\c</style>{}\n')).toBe('"a\\22 b\\5c c\\3c \\2f style\\3e \\7b \\7d \\a "');
  });

  it("writes nothing but harmless signs and escapes, whatever comes", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary-ascii" }), (text) => {
        expect(cssString(text)).toMatch(/^"(?:[\p{L}\p{N} .,;:·–′″+-]|\\[0-9a-f]{1,6} )*"$/u);
      }),
    );
  });
});

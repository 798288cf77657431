import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { markFault, markType } from "#functions/media/mark-form.ts";
import { markSvg } from "#infra/demo/mark.ts";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const joined = (...parts: Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));
const behind = bytesOf("PK\u0003\u0004 a whole archive, <script>alert(1)</script>");
const fault = (bytes: Uint8Array) => {
  const type = markType(bytes);
  return type && markFault(bytes, type);
};

let png: Uint8Array;
let jpeg: Uint8Array;
beforeAll(async () => {
  const picture = sharp(Buffer.from(markSvg));
  png = new Uint8Array(await picture.clone().png().toBuffer());
  jpeg = new Uint8Array(await picture.clone().flatten({ background: "#fff" }).jpeg().toBuffer());
});

describe("a company's mark as it was sent", () => {
  it("is told by its first bytes, and taken where it is one picture and nothing else", () => {
    expect([markType(png), markType(jpeg), markType(bytesOf(markSvg))]).toEqual(["image/png", "image/jpeg", "image/svg+xml"]);
    expect([fault(png), fault(jpeg), fault(bytesOf(markSvg))]).toEqual([undefined, undefined, undefined]);
    for (const other of ["%PDF-1.7", "GIF89a", "<html><svg></svg></html>", "", "<!-- <svg> -->"])
      expect(markType(bytesOf(other))).toBeUndefined();
  });

  it("is refused with anything behind its end, and where it is cut off", () => {
    for (const whole of [png, jpeg, bytesOf(markSvg)]) expect(fault(joined(whole, behind))).toBe("mark-more-than-picture");
    for (const whole of [png, jpeg]) expect(fault(whole.subarray(0, whole.length - 20))).toBe("mark-unreadable");
  });

  const inside = (part: string): string => markSvg.replace("</svg>", `${part}</svg>`);
  it.each([
    inside("<script>alert(1)</script>"),
    inside('<script href="#a"/>'),
    inside('<svg:script xmlns:svg="http://www.w3.org/2000/svg">1</svg:script>'),
    inside("<foreignObject><p>words</p></foreignObject>"),
    inside('<image href="https://example.org/a.png"/>'),
    inside('<use xlink:href="https://example.org/a.svg#b"/>'),
    inside('<a href="javascript:alert(1)"><path d="M0 0"/></a>'),
    inside('<path d="M0 0" onload="alert(1)"/>'),
    inside("<style>@import url(https://example.org/a.css);</style>"),
    inside('<path style="fill:url(https://example.org/a.svg#b)" d="M0 0"/>'),
    markSvg.replace("<svg", '<!DOCTYPE svg [<!ENTITY a "b">]><svg'),
    `<?xml version="1.0"?><?xml-stylesheet href="a.css"?>${markSvg}`,
  ])("is refused as a drawing that runs, loads or stands in for something: %#", (text) => {
    expect(fault(bytesOf(text)) ?? "no drawing").toMatch(/mark-more-than-picture|no drawing/);
  });

  it("may use its own parts", () => {
    expect(fault(bytesOf(inside('<defs><path id="a" d="M0 0h9"/></defs><use href="#a"/><path fill="url(#a)" d="M0 0"/>')))).toBeUndefined();
  });
});

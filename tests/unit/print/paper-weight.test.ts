import { Buffer } from "node:buffer";
import { deflateSync } from "node:zlib";
import { PDFDocument, StandardFonts } from "@cantoo/pdf-lib";
import { describe, expect, it } from "vitest";
import { drawsLightly, MOST_UNPACKED, opens } from "#functions/print/paper-weight.ts";
import { readPaper } from "#functions/print/papers.ts";

/** A page whose drawing is this stream, shown so many times over. */
function paper(dictionary: string, data: Uint8Array, times = 1, more = ""): Uint8Array {
  const contents = Array.from({ length: times }, () => "4 0 R").join(" ");
  const objects = [
    "1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n",
    "2 0 obj\n<</Type/Pages/Kids[3 0 R]/Count 1>>\nendobj\n",
    `3 0 obj\n<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]/Contents[${contents}]/Resources<<>>>>\nendobj\n`,
    `4 0 obj\n<<${dictionary}/Length ${data.length}>>\nstream\n`,
  ];
  const end = `\nendstream\nendobj\ntrailer\n<</Root 1 0 R/Size 5${more}>>\n%%EOF\n`;
  return new Uint8Array(
    Buffer.concat(["%PDF-1.7\n", ...objects].map((text) => Buffer.from(text)).concat(Buffer.from(data), Buffer.from(end))),
  );
}
const blanks = (count: number): Uint8Array => deflateSync(Buffer.alloc(count, 0x20), { level: 9 });
const heavy = { ok: false, refusal: { code: "paper-too-heavy", place: "paper", figures: { most: 32 } } };

describe("a paper that unpacks to far more than it is", () => {
  it("in the drawing of a page: 100 MB out of 100 kB", async () => {
    const file = paper("/Filter/FlateDecode", blanks(100_000_000));
    expect(file.length).toBeLessThan(125_000);
    const before = process.memoryUsage().arrayBuffers;
    expect(await readPaper(file)).toEqual(heavy);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(200_000_000);
  });

  it("in a drawing that is shown many times over, and in one packed twice or with its filter spelt otherwise", async () => {
    const most = 1_000_000;
    for (const file of [
      paper("/Filter/FlateDecode", blanks(200_000), 6),
      paper("/Filter[/FlateDecode/FlateDecode]", deflateSync(blanks(2_000_000))),
      paper("/F#69lter/Flate#44ecode", blanks(2_000_000)),
      paper("", Buffer.alloc(1_200_000, 0x20)),
    ])
      expect(drawsLightly(await PDFDocument.load(file), most)).toBe(false);
    expect(drawsLightly(await PDFDocument.load(paper("/Filter/FlateDecode", blanks(900_000))), most)).toBe(true);
  });

  it("in what holds its objects, before the file is opened", async () => {
    const bomb = blanks(40_000_000);
    for (const type of ["/Type/ObjStm", "/Type /XRef", "/Type/Obj#53tm", "/Type 9 0 R"])
      expect(opens(paper(`${type}/N 1/First 4/Filter/FlateDecode`, bomb)), type).toBe("paper-too-heavy");
    expect(opens(paper("/Type/ObjStm/N 1/First 4/Filter/LZWDecode", bomb))).toBe("paper-too-heavy");
    // another window than deflate has: the library reads it all the same
    expect(opens(paper("/Type/ObjStm/N 1/First 4/Filter/FlateDecode", Uint8Array.of(0x88, 0x1c, ...bomb.subarray(2))))).toBe(
      "paper-too-heavy",
    );
  });

  it("a file that is locked is told as that, however heavy", async () => {
    expect(opens(paper("/Filter/FlateDecode", blanks(1_000), 1, "/Encrypt 9 0 R"))).toBe("paper-locked");
    expect(opens(paper("/Type/XRef/Encr#79pt 9 0 R/Filter/FlateDecode", blanks(1_000)))).toBe("paper-locked");
  });
});

describe("an honest paper", () => {
  it("is opened, with objects packed and without, and a page of a million bytes of drawing too", async () => {
    const document = await PDFDocument.create();
    const font = await document.embedFont(StandardFonts.Courier);
    for (let page = 0; page < 5; page += 1)
      document.addPage([400, 600]).drawText("a stream of water, endstream", { x: 40, y: 500, size: 20, font });
    for (const useObjectStreams of [true, false]) {
      const bytes = await document.save({ useObjectStreams });
      expect(opens(bytes)).toBe("lightly");
      const read = await readPaper(bytes);
      expect(read.ok && read.value.getPageCount()).toBe(5);
      expect(read.ok && drawsLightly(read.value)).toBe(true);
    }
    expect(MOST_UNPACKED).toBe(32_000_000);
    expect((await readPaper(paper("/Filter/FlateDecode", blanks(1_000_000)))).ok).toBe(true);
  }, 60_000);
});

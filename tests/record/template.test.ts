import { readdir, readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { headingKeys } from "#core/record/index.ts";
import { headingsEn as english } from "#core/record/words/headings-en.ts";
import { headingsEs as spanish } from "#core/record/words/headings-es.ts";
import { recordPage } from "#templates/record/index.ts";
import { hostile, sampleModel, samplePhotoCount, spanishChange } from "../samples/record-model.ts";
import type { SamplePhoto } from "../samples/record-photos.ts";

const photos: SamplePhoto[] = Array.from({ length: samplePhotoCount }, (_, at) => ({
  sha256: at.toString(16).padStart(64, "0"),
  bytes: new Uint8Array(),
  width: 8,
  height: 6,
}));
const surroundings = {
  fonts: "",
  photo: ({ photo, missing }: { photo: string; missing?: string }) => (missing === undefined ? { address: `/${photo}` } : { missing }),
};
const enclosures = [{ paper: "c".repeat(64), title: "Permit 12", says: "permit" }];
const page = (change = {}) => recordPage(sampleModel(photos, { enclosures, ...change }), surroundings);

describe("recordPage", () => {
  it("prints nothing that somebody typed as an element", () => {
    const text = page();
    expect(text.match(/<script|<iframe/g)).toBeNull();
    expect(text.match(/<h1/g)).toHaveLength(1);
    expect(text.match(/<\/style>/g)).toHaveLength(2);
    expect(text).toContain("&lt;script&gt;document.title=");
    expect(hostile.script).toContain("<script>");
  });

  it("uses every word of the list, and says which one the model lacks", () => {
    const marked = Object.fromEntries(headingKeys.map((key) => [key, `word-${key}-`]));
    const bare = { accepted: [], leftToDo: [], exceptions: [], summary: { built: [], buried: [], marks: "" } };
    const printed = page({ words: marked }) + page({ words: marked, ...bare });
    // Print chooses between the first two when a photo fails, among the enclosure's when a paper is not bound in; one is the receiver's page's.
    const ofPapers = ["locked", "not-there", "too-large", "too-long", "unreadable"].map((why) => `enclosure-${why}`);
    const printsOwn = ["photo-not-in-store", "photo-unreadable", "released-pdf", ...ofPapers];
    expect(headingKeys.filter((key) => !printed.includes(`word-${key}-`) && !printsOwn.includes(key))).toEqual([]);
    const { warranty: _left, ...fewer } = english;
    expect(() => page({ words: fewer })).toThrow("'warranty' in en");
  });

  it("has the same words in both languages of the sample", () => {
    expect(Object.keys(spanish)).toEqual(Object.keys(english));
    expect(Object.keys(english).sort()).toEqual([...headingKeys].sort());
    expect(page(spanishChange)).toContain('<html lang="es">');
  });

  it("draws a verdict's shape beside its word for every tone, each with a shape of its own", () => {
    const marks = [...page().matchAll(/<span class="mark (\w+)"><svg class="shape"[^>]*aria-hidden="true">(.*?)<\/svg><b>([^<]+)<\/b>/g)];
    const shapes = new Map(marks.map(([, tone = "", shape = ""]) => [tone, shape]));
    expect([...shapes.keys()].sort()).toEqual(["apart", "missing", "outside", "undecided", "within"]);
    expect(new Set(shapes.values()).size).toBe(5);
  });

  it("says it when nothing was accepted, nothing is left and nothing is out of the way", () => {
    const text = page({ accepted: [], leftToDo: [], exceptions: [] });
    for (const key of ["accepted-none", "left-to-do-none", "exceptions-none"] as const) expect(text).toContain(english[key]);
  });

  it("heads every table's columns and rows", () => {
    const tables = page().match(/<table[\s\S]*?<\/table>/g) ?? [];
    expect(tables.length).toBeGreaterThan(20);
    for (const table of tables) {
      const columns = (table.match(/<th scope="col"/g) ?? []).length;
      expect(columns).toBeGreaterThan(1);
      expect(table).toContain('<th scope="row"');
      const spans = table.match(/<colgroup>(.*?)<\/colgroup>/)?.[1]?.match(/<col/g)?.length ?? columns;
      expect(spans).toBe(columns);
    }
  });
});

describe("letters", () => {
  it("are quarters of a CSS pixel high in every printed document: at other heights the browser places each by itself", async () => {
    const folder = new URL("../../templates/", import.meta.url);
    const files = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".ts"));
    const sizes = (
      await Promise.all(
        files.map(async (name) => {
          const text = await readFile(new URL(name, folder), "utf8");
          return [...text.matchAll(/(?:font-size:|font: \d+) ?([\d.]+)pt/g)].map(([, size]) => ({ name, size: Number(size) }));
        }),
      )
    ).flat();
    expect(sizes.length).toBeGreaterThan(40);
    expect(sizes.filter(({ size }) => !Number.isInteger(size / 0.1875))).toEqual([]);
  });

  it("have the company's mark beside them no larger than its place, whatever colours it has", () => {
    const { company } = sampleModel(photos);
    for (const colours of [undefined, { lines: "#112233" }, { lines: "#112233", words: "#445566" }]) {
      const { colours: _own, ...rest } = company;
      const text = page({ company: { ...rest, ...(colours && { colours }) } });
      expect(text).toContain("\n.company-mark img { max-width: 34mm; max-height: 13mm; }\n");
      expect(text.includes("color: #445566")).toBe(colours !== undefined && "words" in colours);
    }
  });
});

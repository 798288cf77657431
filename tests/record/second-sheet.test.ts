import { afterAll, beforeAll, expect, it } from "vitest";
import { readSheet } from "#core/job/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { book } from "../helpers/job.ts";
import { type ReadPdf, readPdf } from "../helpers/pdf.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";
import { recordOf } from "../helpers/record.ts";
import { samplePhotos } from "../samples/record-photos.ts";
import file from "../samples/sheets/ten-items.json" with { type: "json" };

let printer: SamplePrinter;
let model: RecordModel;
let pdf: ReadPdf;

const flat = (text: string): string => text.replace(/\s+/g, "");

beforeAll(async () => {
  const sheet = readSheet(file);
  if (!sheet.ok) throw new Error(sheet.refusal.place);
  const photos = await samplePhotos(3);
  printer = await samplePrinter(photos);
  const [deep, braced, seen] = photos.map(({ sha256 }) => sha256);
  const b = book(sheet.value);
  const post = (item: string) => ({ item, tag: "left" });
  b.enter("tag-named", { set: "gate-post", tag: "left", hiddenBy: "pour-concrete", description: "by the old wall" });
  b.picture(post("hole-with-rule"), { photo: deep ?? "" });
  b.picture(post("post-braced"), { photo: braced ?? "" });
  b.answer(post("post-plumb"), "it-is");
  b.enter("does-not-apply", { about: post("stone-under"), reason: "rock bottom", role: "crew" });
  b.read(post("hole-deep"), "33 8/16");
  b.enter("reworked", { about: { check: "hole-depth", tag: "left" }, done: "dug deeper", minutes: 15 });
  b.read(post("hole-deep"), "36 0/16");
  b.covered("pour-concrete");
  b.picture("footing-seen", { photo: seen ?? "" });
  b.read("top-below-soil", "4 0/16");
  b.answer("gate-swings", "it-is");
  const known = Object.fromEntries(
    photos.map(({ sha256, width, height }) => [sha256, { rendition: `kettle/renditions/${sha256}/print.jpg`, width, height }]),
  );
  model = recordOf(b.ledger(), { edition: "customer", settings: { name: "Posts of Nowhere" }, photos: known });
  const printed = await printer.print(model);
  if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
  pdf = await readPdf(printed.value.pdf);
}, 60_000);
afterAll(() => printer.browser.close());

it("a job by another trade's tolerance sheet prints whole, with no code touched", () => {
  const text = flat(pdf.text);
  expect(model.steps.length).toBeGreaterThan(2);
  for (const step of model.steps) expect(text).toContain(flat(`${step.number}${step.title}`));
  for (const view of model.findings) expect(text, view.check).toContain(flat(view.verdictWord + view.says));
  for (const reading of model.steps.flatMap(({ readings }) => readings)) expect(text).toContain(flat(reading.title + reading.typed));
  for (const covering of model.coverings) expect(text).toContain(flat(covering.title + covering.state));
  expect(pdf.painted.reduce((sum, count) => sum + count, 0)).toBe(3);
});

it("says what is not as asked: what was done over, what nobody said was covered, what is missing", () => {
  expect(model.exceptions.map(({ verdictWord }) => verdictWord)).toEqual([
    "covered; nobody said so, no clearance was shown",
    "not taken",
    "not taken",
    "within",
  ]);
  expect(model.exceptions.at(-1)?.says).toContain("Before rework: 33 1/2 in (too close to call).");
  expect(model.due.map(({ title, state }) => [title, state])).toEqual([["handing over", "missing"]]);
  expect(model.steps.flatMap(({ explains }) => explains).join()).toMatch(/left: by the old wall$/);
});

import { describe, expect, it } from "vitest";
import { readPrintRequest } from "#functions/print/request.ts";

const sha = "a".repeat(64);
const good = {
  model: { format: 1, title: { issuedAt: 1 }, steps: [] },
  key: "kettle/records/job/1.pdf",
  photos: { [sha]: `kettle/renditions/${sha}/print.jpg` },
  attachments: [{ name: "ledger.json", type: "application/json", text: "{}", relationship: "Data" }],
};
const read = (value: unknown) => readPrintRequest(new TextEncoder().encode(typeof value === "string" ? value : JSON.stringify(value)));

describe("readPrintRequest", () => {
  it("takes a whole request", () => {
    expect(read(good)).toEqual({ ok: true, value: good });
  });

  it.each([
    ["body", "{"],
    ["body", [good]],
    ["body/model", { ...good, model: { ...good.model, format: 2 } }],
    ["body/model/title/issuedAt", { ...good, model: { ...good.model, title: { issuedAt: "2026" } } }],
    ["body/key", { ...good, key: "kettle/originals/job" }],
    ["body/key", { ...good, key: "kettle/records/../../other/records/1.pdf" }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: `other/renditions/${sha}/print.jpg` } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: `kettle/renditions/../../other/renditions/${sha}/print.jpg` } }],
    ["body/photos/x", { ...good, photos: { x: `kettle/renditions/${sha}/print.jpg` } }],
    ["body/attachments", { ...good, attachments: [{ ...good.attachments[0], name: "../ledger.json" }] }],
    ["body/attachments", { ...good, attachments: [{ ...good.attachments[0], relationship: "Anything" }] }],
  ])("refuses what is wrong at %s", (place, value) => {
    const outcome = read(value);
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "request-shape", place } });
  });
});

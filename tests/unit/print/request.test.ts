import { describe, expect, it } from "vitest";
import { readPrintRequest } from "#functions/print/request.ts";

const sha = "a".repeat(64);
const picture = [
  { key: `kettle/renditions/${sha}/print.jpg`, bytes: 300_000, sha256: sha },
  { key: `kettle/renditions/${sha}/column.jpg` },
];
const good = {
  kind: "record",
  model: { format: 1, title: { issuedAt: 1 }, steps: [] },
  key: "kettle/records/job/1.pdf",
  photos: { [sha]: picture },
  attachments: [{ name: "ledger.json", type: "application/json", text: "{}", relationship: "Data" }],
};
const design = {
  kind: "design-check",
  model: { format: 1, title: { at: 1 }, questions: [] },
  key: "kettle/designs/job/1.pdf",
};
const cards = {
  kind: "cards",
  model: { format: 1, title: { at: 1 }, cards: [] },
  key: "kettle/cards/job/1.pdf",
};
const sealing = {
  kind: "sealing",
  key: "kettle/records/job/1.pdf",
  attachments: [{ name: "seal.jws", type: "application/jose", text: "e30.e30.e30", relationship: "Supplement" }],
  issuedAt: 1,
};
const read = (value: unknown) => readPrintRequest(new TextEncoder().encode(typeof value === "string" ? value : JSON.stringify(value)));

describe("readPrintRequest", () => {
  it("takes a whole request", () => {
    expect(read(good)).toEqual({ ok: true, value: good });
    expect(read(design)).toEqual({ ok: true, value: design });
    expect(read(cards)).toEqual({ ok: true, value: cards });
    expect(read(sealing)).toEqual({ ok: true, value: sealing });
  });

  it.each([
    ["body", "{"],
    ["body", [good]],
    ["body/kind", { ...good, kind: "letter" }],
    ["body/kind", { ...good, kind: "toString" }],
    ["body/kind", { ...good, kind: undefined }],
    ["body/model", { ...good, kind: "design-check", key: design.key }],
    ["body/model", { ...design, kind: "record", key: good.key }],
    ["body/model/title/at", { ...design, model: { ...design.model, title: { at: 1.5 } } }],
    ["body/key", { ...design, key: good.key }],
    ["body/key", { ...cards, key: design.key }],
    ["body/model", { ...cards, model: { ...cards.model, cards: undefined } }],
    ["body/model/title/at", { ...cards, model: { ...cards.model, title: {} } }],
    ["body/key", { ...good, key: design.key }],
    ["body/key", { ...design, key: "kettle/designs/../../other/designs/1.pdf" }],
    ["body/key", { ...sealing, key: design.key }],
    ["body/issuedAt", { ...sealing, issuedAt: "2026" }],
    ["body/attachments", { ...sealing, attachments: [] }],
    ["body/attachments", { ...sealing, attachments: [{ ...sealing.attachments[0], name: "../seal.jws" }] }],
    ["body/model", { ...good, model: { ...good.model, format: 2 } }],
    ["body/model/title/issuedAt", { ...good, model: { ...good.model, title: { issuedAt: "2026" } } }],
    ["body/key", { ...good, key: "kettle/originals/job" }],
    ["body/key", { ...good, key: "kettle/records/../../other/records/1.pdf" }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [{ key: `other/renditions/${sha}/print.jpg` }] } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [...picture, { key: `other/renditions/${sha}/column.jpg` }] } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [{ key: `kettle/renditions/../../other/renditions/${sha}/print.jpg` }] } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [] } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [{ ...picture[0], bytes: -1 }] } }],
    [`body/photos/${sha}`, { ...good, photos: { [sha]: [{ ...picture[0], sha256: "none" }] } }],
    ["body/photos/x", { ...good, photos: { x: picture } }],
    ["body/attachments", { ...good, attachments: [{ ...good.attachments[0], name: "../ledger.json" }] }],
    ["body/attachments", { ...good, attachments: [{ ...good.attachments[0], relationship: "Anything" }] }],
  ])("refuses what is wrong at %s", (place, value) => {
    const outcome = read(value);
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "request-shape", place } });
  });
});

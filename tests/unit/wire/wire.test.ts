import { describe, expect, it } from "vitest";
import { factKinds } from "#core/job/index.ts";
import { batch, newCompany, openApi, read, readWhat, sentEntry, settings, whats } from "#core/wire/index.ts";

const hex = "a".repeat(64);
const good = {
  sealed: {
    format: 1,
    job: "job1",
    id: "e1",
    kind: "answered",
    author: { person: "p", phone: "h" },
    run: 0,
    made: 1_700_000_000_000,
    parts: { what: hex },
  },
  body: { what: { salt: hex, content: { item: "a-b", choice: "dry" } } },
};
const bent = (change: (entry: typeof good) => void): unknown => {
  const copy = structuredClone(good);
  change(copy);
  return copy;
};
const placeOf = (value: unknown): string => {
  const outcome = read(sentEntry, value, "entry-shape", "entries/0");
  return outcome.ok ? "taken" : outcome.refusal.place;
};

describe("shapes on the wire", () => {
  it("takes an entry as a phone seals it", () => {
    expect(placeOf(good)).toBe("taken");
  });

  it.each([
    ["entries/0/sealed/made", bent((e) => Object.assign(e.sealed, { made: 1.5 }))],
    ["entries/0/sealed/made", bent((e) => Object.assign(e.sealed, { made: -1 }))],
    ["entries/0/sealed/made", bent((e) => Object.assign(e.sealed, { made: 253_402_300_800_000 }))],
    ["entries/0/sealed/format", bent((e) => Object.assign(e.sealed, { format: 2 }))],
    ["entries/0/sealed/kind", bent((e) => Object.assign(e.sealed, { kind: "Not A Kind" }))],
    ["entries/0/sealed/job", bent((e) => Object.assign(e.sealed, { job: "../other" }))],
    ["entries/0/sealed/received", bent((e) => Object.assign(e.sealed, { received: 5 }))],
    ["entries/0/body/what/salt", bent((e) => Object.assign(e.body.what, { salt: "short" }))],
    ["entries/0/sealed", { body: {} }],
    ["entries/0", null],
  ])("refuses with the place %s", (place, value) => {
    expect(placeOf(value)).toBe(place);
  });

  it("keeps a clock that is years off: the last millisecond of 9999 is an instant, the next is none", () => {
    expect(read(batch, { sent: 253_402_300_799_999, entries: [1] }, "request-shape").ok).toBe(true);
    expect(read(batch, { sent: 253_402_300_800_000, entries: [1] }, "request-shape").ok).toBe(false);
  });

  it("takes 200 entries at once and not 201", () => {
    expect(read(batch, { sent: 1, entries: Array(200).fill(0) }, "request-shape").ok).toBe(true);
    expect(read(batch, { sent: 1, entries: Array(201).fill(0) }, "request-shape").ok).toBe(false);
  });

  it("has no place for a time of receipt", () => {
    const outcome = read(batch, { sent: 1, entries: [1], received: 2 }, "request-shape");
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "request-shape", place: "received" } });
  });

  it("keeps what it does not know of settings, and misses what it must know", () => {
    const known = { name: "A", zone: "America/New_York", units: "inch", language: "en" };
    expect(read(settings, { ...known, warranty: { text: ["x"] } }, "request-shape")).toMatchObject({
      ok: true,
      value: { warranty: { text: ["x"] } },
    });
    expect(read(settings, { ...known, units: "cubits" }, "request-shape")).toMatchObject({ ok: false, refusal: { place: "units" } });
    expect(read(newCompany, { ...known, owner: {} }, "request-shape")).toMatchObject({ ok: false, refusal: { place: "owner/name" } });
  });
});

describe("what a fact says", () => {
  it("has a shape for every kind of fact and for no other", () => {
    expect(Object.keys(whats).sort()).toEqual([...factKinds].sort());
  });

  it("refuses a misspelt member, by its name", () => {
    const outcome = readWhat("answered", { item: "a-b", choice: "dry", tags: "A" }, "entries/3/what");
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "entry-shape", place: "entries/3/what/tags" } });
  });

  it("lets an unknown kind say what it likes", () => {
    expect(readWhat("seen-by-drone", { anything: [1, 2] }, "entries/0/what").ok).toBe(true);
    // A name that every object has is no kind either.
    expect(readWhat("constructor", { anything: 1 }, "entries/0/what").ok).toBe(true);
  });

  it("tells a fault inside a choice of shapes by its deepest place", () => {
    const outcome = readWhat("opened-up-again", { covering: "c-d", exposed: [{ item: 5 }], reason: "r" }, "what");
    expect(outcome).toMatchObject({ ok: false, refusal: { place: "what/exposed/0/item" } });
  });
});

describe("the OpenAPI document", () => {
  const document = openApi([
    { method: "POST", path: "/api/jobs/:job/entries", says: "s", who: ["crew"], takes: batch, gives: { 200: "nothing" } },
    { method: "GET", path: "/api/jobs/:job/entries", says: "s", who: ["nobody"], gives: { 200: "pdf" } },
  ]) as { paths: Record<string, Record<string, Record<string, unknown>>>; openapi: string };

  it("puts both methods under one path, with its parameter", () => {
    const path = document.paths["/api/jobs/{job}/entries"];
    expect(document.openapi).toBe("3.1.0");
    expect(Object.keys(path ?? {})).toEqual(["post", "get"]);
    expect(path?.get?.parameters).toEqual([{ name: "job", in: "path", required: true, schema: { type: "string" } }]);
    expect(path?.post?.parameters).toEqual([
      { name: "job", in: "path", required: true, schema: { type: "string" } },
      { $ref: "#/components/parameters/FromTheApp" },
    ]);
  });

  it("says who may call, and describes the body by its shape", () => {
    const { post, get } = document.paths["/api/jobs/{job}/entries"] as Record<string, Record<string, unknown>>;
    expect(post?.["x-who"]).toEqual(["crew"]);
    expect(get?.security).toEqual([]);
    expect(JSON.stringify(post?.requestBody)).toContain('"maxItems":200');
  });
});

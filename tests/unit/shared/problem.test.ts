import { describe, expect, it } from "vitest";
import { refusalCodes, refuse } from "#core/outcome/index.ts";
import { readEnvironment, readPort, tooOldNode } from "#functions/shared/environment.ts";
import { originalKey, recordKey, renditionKey } from "#functions/shared/keys.ts";
import { problem, problemResponse } from "#functions/shared/problem.ts";
import { statusOf } from "#functions/shared/status.ts";

const { refusal } = refuse("reading-fraction", "entries/3/what/typed", { typed: "1 1/7" }, 5);

describe("a refusal as an RFC 9457 problem document", () => {
  it("holds the document's own members and the refusal's", () => {
    expect(problem(refusal, 422, "No tape has sevenths.", "r-1")).toEqual({
      type: "urn:asburied:refusal:reading-fraction",
      title: "Reading fraction",
      status: 422,
      detail: "No tape has sevenths.",
      code: "reading-fraction",
      place: "entries/3/what/typed",
      column: 5,
      figures: { typed: "1 1/7" },
      requestId: "r-1",
    });
  });
  it("leaves out what there is not", () => {
    expect(Object.keys(problem(refuse("photo-empty", "photo").refusal, 422, ""))).toEqual([
      "type",
      "title",
      "status",
      "detail",
      "code",
      "place",
      "figures",
    ]);
  });
  it("answers with the media type, the status of the table and the sentence", async () => {
    const response = problemResponse(refusal, ({ code, figures }) => `${code}: ${figures.typed}`);
    expect([response.status, response.headers.get("content-type")]).toEqual([422, "application/problem+json"]);
    expect(await response.json()).toMatchObject({ status: 422, detail: "reading-fraction: 1 1/7" });
  });
  it("has an error status for every code", () => {
    expect(Object.keys(statusOf).sort()).toEqual([...refusalCodes].sort());
    for (const status of Object.values(statusOf)) expect(status >= 400 && status < 600).toBe(true);
  });
});

describe("keys of the store", () => {
  const sha = "ab".repeat(32);
  it("lie in the company's own folder", () => {
    expect(originalKey("garden", sha)).toBe(`garden/originals/${sha}`);
    expect(renditionKey("garden", sha, "print")).toBe(`garden/renditions/${sha}/print.jpg`);
    expect(recordKey("garden", "job-1", 2)).toBe("garden/records/job-1/2.pdf");
    expect(recordKey("garden", "job-1", 2, "customer.pdf")).toBe("garden/records/job-1/2.customer.pdf");
  });
  it("take nothing that could leave it", () => {
    for (const company of ["", "..", "a/b", "a b", "é", "a".repeat(65)]) expect(() => originalKey(company, sha)).toThrow(RangeError);
    for (const hash of ["", sha.toUpperCase(), sha.slice(1), `${sha}0`, `${sha}\n`])
      expect(() => originalKey("garden", hash)).toThrow(RangeError);
    for (const version of [0, -1, 1.5, Number.NaN]) expect(() => recordKey("garden", "job", version)).toThrow(RangeError);
    expect(() => recordKey("garden", "job", 1, "/../x")).toThrow(RangeError);
  });
});

describe("a process's environment", () => {
  it("gives the values, or every missing name at once", () => {
    expect(readEnvironment({ A: "1", B: "2", C: "3" }, ["A", "B"])).toEqual({ ok: true, value: { A: "1", B: "2" } });
    expect(readEnvironment({ A: "1", B: " " }, ["A", "B", "C"])).toEqual({ ok: false, missing: ["B", "C"] });
  });
  it("reads ports", () => {
    expect([readPort("0"), readPort("8080"), readPort("65535")]).toEqual([0, 8080, 65535]);
    for (const text of [undefined, "", "65536", "80a", "-1", "8e3"]) expect(readPort(text)).toBeUndefined();
  });
  it("stops on an old Node with the version it found", () => {
    expect(tooOldNode("v20.20.2")).toContain("v20.20.2");
    expect(tooOldNode("v24.0.0")).toBeUndefined();
    expect(tooOldNode("v101.1.0")).toBeUndefined();
  });
});

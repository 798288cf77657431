import { describe, expect, test } from "vitest";
import { Counters } from "#functions/edge/counters.ts";
import { thrownOf } from "#functions/edge/log.ts";

describe("the log", () => {
  const secret = "robin@example.org at 41.2342, -73.1111 with token_aB3dE6gH9jK2";

  test("tells where something broke and never what was sent", () => {
    function readName(): never {
      throw new TypeError(`cannot read ${secret}`);
    }
    const thrown = (() => {
      try {
        return readName();
      } catch (caught) {
        return thrownOf(caught);
      }
    })();
    expect(thrown.name).toBe("TypeError");
    expect(thrown.at[0]).toMatch(/^readName log\.test\.ts:\d+:\d+$/);
    expect(thrown.at.length).toBeLessThanOrEqual(8);
    expect(JSON.stringify(thrown)).not.toMatch(/robin|41\.2|token|cannot read/);
  });

  test("a message of several lines that looks like a frame stays out of it too", () => {
    const said = JSON.stringify(thrownOf(new Error(`x\n    at robin (${secret})\n    at 41.2342`)));
    expect(said).not.toMatch(/41\.2342|token/);
  });

  test("the database's words stay where they name tables and columns alone", () => {
    expect(thrownOf(new Error("D1_ERROR: UNIQUE constraint failed: entry.id: SQLITE_CONSTRAINT")).database).toBe(
      "D1_ERROR: UNIQUE constraint failed: entry.id: SQLITE_CONSTRAINT",
    );
    expect(thrownOf(new Error("D1_ERROR: near 4123: syntax")).database).not.toContain("4123");
    expect(thrownOf(new Error("no database"))).not.toHaveProperty("database");
  });

  test("what is thrown and is no error is told by its type alone", () => {
    expect(thrownOf(secret)).toEqual({ name: "string", at: [] });
    expect(thrownOf(undefined)).toEqual({ name: "undefined", at: [] });
  });
});

describe("counters", () => {
  test("sum answers and their time by route and hundreds", () => {
    const counters = new Counters();
    counters.note("GET /api/jobs", 200, 12);
    counters.note("GET /api/jobs", 204, 8);
    counters.note("GET /api/jobs", 404, 5);
    counters.note("PUT /api/photos/:sha256", 200, 100);
    expect(counters.rows()).toEqual([
      { route: "GET /api/jobs", hundreds: 2, answers: 2, milliseconds: 20 },
      { route: "GET /api/jobs", hundreds: 4, answers: 1, milliseconds: 5 },
      { route: "PUT /api/photos/:sha256", hundreds: 2, answers: 1, milliseconds: 100 },
    ]);
  });
});

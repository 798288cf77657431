import { expect, test } from "vitest";
import { statements } from "#infra/local/statements.ts";

test("semicolons in texts, names, comments and triggers end no statement", () => {
  const sql = `-- a comment; with a semicolon
    CREATE TABLE "od;d" (text TEXT DEFAULT 'it''s; so'); /* another; one */
    CREATE TRIGGER keep BEFORE DELETE ON note BEGIN SELECT RAISE(ABORT, 'no; never'); SELECT 1; END;
    CREATE INDEX by_text ON note (text)`;
  expect(statements(sql)).toEqual([
    `CREATE TABLE "od;d" (text TEXT DEFAULT 'it''s; so')`,
    "CREATE TRIGGER keep BEFORE DELETE ON note BEGIN SELECT RAISE(ABORT, 'no; never'); SELECT 1; END",
    "CREATE INDEX by_text ON note (text)",
  ]);
});

test("nothing but comments and blanks is no statement", () => {
  expect(statements("  -- nothing\n/* here */ ; ;\n")).toEqual([]);
});

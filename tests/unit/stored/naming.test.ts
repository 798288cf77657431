import { DatabaseSync } from "node:sqlite";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { isNamedIn, type Sought } from "#core/keeping/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import { hostileSigns } from "../../helpers/damage.ts";
import { migrations } from "../../helpers/stack-folder.ts";

// By a variable name: the edge is written for another platform's types than the tests.
const namingFile = "#functions/edge/adapters/naming.ts";
const { namingIn } = (await import(namingFile)) as {
  namingIn: (database: unknown) => { jobs(company: string, sought: Sought): Promise<ReadonlySet<string>> };
};

const sqlite = new DatabaseSync(":memory:");
const d1 = d1Over(sqlite);
const naming = namingIn(d1);
beforeAll(() => migrate(d1 as unknown as Database, migrations, "2026-11-28T00:00:00.000Z"));

/** One job for each text, in which it is said. */
function filled(texts: readonly string[], authors: readonly string[] = []): void {
  sqlite.exec("DELETE FROM entry");
  const insert = sqlite.prepare("INSERT INTO entry VALUES ('c', ?, 1, ?, 'note', 'd', 'h', ?, ?)");
  texts.forEach((text, i) => {
    const body = JSON.stringify({ what: { salt: "0".repeat(64), content: { text } } });
    insert.run(`job-${i}`, `e${i}`, JSON.stringify({ author: { person: authors[i] ?? "nobody", phone: "p" } }), body);
  });
}
const jobs = async (sought: Partial<Sought>, company = "c"): Promise<readonly string[]> =>
  [...(await naming.jobs(company, { names: [], contacts: [], ...sought }))].sort();

describe("the ledgers that can name a person", () => {
  test("are those that do, and few others: by name, by mail, by telephone, by id", async () => {
    filled(
      ["met Ines Marlow", "INÉS MARLOW", "Marlowe's dog", "23 3/8 in", "½ in", "ines@example.invalid", "tel. (555) 016-\n0012", "x", "p1"],
      ["", "", "", "", "", "", "", "p1"],
    );
    // 'Marlowe' holds the word and is told apart when the ledger is read
    expect(await jobs({ names: ["Ines Marlow"] })).toEqual(["job-0", "job-1", "job-2"]);
    expect(await jobs({ contacts: ["INES@example.invalid"] })).toEqual(["job-5"]);
    expect(await jobs({ contacts: ["+1 555 016 0012"] })).toEqual(["job-6"]);
    expect(await jobs({ contacts: ["0160012"] })).toEqual(["job-6"]);
    expect(await jobs({ person: "p1" })).toEqual(["job-7", "job-8"]);
    expect(await jobs({})).toEqual([]);
    expect(await jobs({ names: ["Ines Marlow"] }, "another")).toEqual([]);
  });

  test("of more rows than one page: none is left out, and none is read twice for ever", async () => {
    filled(Array.from({ length: 1_203 }, (_, i) => (i % 3 === 0 ? "José Ruiz, ½" : i % 3 === 1 ? "JOSE RUIZ" : "½")));
    expect(await jobs({ names: ["Jose Ruiz"] })).toHaveLength(802);
  });

  test("never leave out one that does, however it is written", async () => {
    const sought: Sought = {
      names: ["Ines Marlow", "Ståle Ørn", "Łucja", "Иван", "O'Neil-Ruiz", "Ng"],
      contacts: ["+1 (555) 016-0012", "Ines@Example.invalid", "ø@example.invalid", '"i n"@example.invalid'],
    };
    const pieces = fc.oneof(
      fc.constantFrom(
        "Ines",
        "INÉS",
        "ine\u0301s",
        "ＩＮＥＳ",
        "Marlow",
        "MARLÓW",
        "Ståle",
        "STALE",
        "Ørn",
        "łucja",
        "ИВАН",
        "o'neil",
        "ruiz",
        "ng",
      ),
      fc.constantFrom(
        "555",
        "016",
        "0012",
        "5550160012",
        "ines@example.invalid",
        "INES@EXAMPLE.INVALID",
        "ø@example.invalid",
        '"i n"@example.invalid',
      ),
      fc.constantFrom(" ", " ", " ", "-", ".", ", ", "(", ")", "/", "\n", "\t", "\u000b", "\f", "\u00a0", "+1 ", "'"),
      fc.constantFrom(...hostileSigns),
    );
    const texts = fc.array(
      fc.array(pieces, { minLength: 1, maxLength: 9 }).map((parts) => parts.join("")),
      { minLength: 60, maxLength: 60 },
    );
    let named = 0;
    await fc.assert(
      fc.asyncProperty(texts, fc.subarray([...sought.names]), fc.subarray([...sought.contacts]), async (said, names, contacts) => {
        filled(said);
        const found = await naming.jobs("c", { names, contacts });
        said.forEach((text, i) => {
          if (!isNamedIn(text, { names, contacts })) return;
          named += 1;
          expect(found.has(`job-${i}`), JSON.stringify(text)).toBe(true);
        });
      }),
      { numRuns: 60, seed: 20_261_128 },
    );
    expect(named).toBeGreaterThan(300);
  });
});

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonical, customerEdition, isWithheld, type Json, type Ledger, type PartName, verify } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { verifyLedger } from "../../helpers/verifier.ts";
import { draft, ledgerOf, sampleLedger, taken } from "./sample.ts";

type Path = readonly (string | number)[];
interface Field {
  readonly path: Path;
  readonly value: string | number;
}

const frozen = (name: string): string => readFileSync(new URL(`../../samples/ledger/${name}.json`, import.meta.url), "utf8");

function fieldsOf(value: unknown, path: Path = []): Field[] {
  if (typeof value === "string" || typeof value === "number") return [{ path, value }];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => fieldsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]));
}

function changed(ledger: unknown, path: Path, value: unknown): unknown {
  const copy: unknown = structuredClone(ledger);
  let at = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
  at[path.at(-1) as string | number] = value;
  return copy;
}

/** The same field with one byte of its JSON text changed, and still of its shape. */
function oneByteOff(value: string | number): string | number {
  if (typeof value === "number") return Number.isInteger(value) ? value + (Math.abs(value % 10) === 9 ? -1 : 1) : -value;
  const last = value.at(-1) === "0" ? "1" : "0";
  return value.slice(0, -1) + last;
}

/** The code of the check that must find a change of this field. */
function codeFor(ledger: Ledger, path: Path): string {
  const name = path.join("/").replace(/^(entries|versions)\/\d+\//, "$1/*/");
  const entry = ledger.entries[Number(path[1])];
  const chained = entry === ledger.entries.at(-1) ? "ledger-hash" : "ledger-link";
  if (name.startsWith("versions")) return "ledger-version-digest";
  if (name.endsWith("/withheld")) return "ledger-withheld-reason";
  if (name.startsWith("entries/*/body")) return "ledger-part-digest";
  if (name.startsWith("entries/*/envelope/parts")) {
    const part = entry?.body[path.at(-1) as PartName];
    return part && isWithheld(part) ? chained : "ledger-part-digest";
  }
  const own: Record<string, string> = {
    format: "ledger-format",
    job: "ledger-job",
    "head/number": "ledger-head",
    "head/hash": "ledger-hash",
    "entries/*/envelope/format": "ledger-format",
    "entries/*/envelope/job": "ledger-job",
    "entries/*/envelope/number": "ledger-number",
    "entries/*/envelope/before": "ledger-link",
  };
  return own[name] ?? chained;
}

// The kind of an attached version is a label for readers: the entry that takes the version over names it, and is chained.
const outsideEveryHash = (path: Path): boolean => path[0] === "versions" && path[2] === "kind";

const whole = await sampleLedger();
const edition = customerEdition(whole, { wholeBodies: ["note-for-office"] });
const twice = await ledgerOf([draft("e-01"), draft("e-02"), draft("e-01", { run: 9 })]);
const otherJob = await ledgerOf([draft("e-01"), draft("e-02", { job: "job-other" })]);

describe("a good ledger", () => {
  it("is found whole by both verifiers", async () => {
    expect(await verify(digest, whole)).toEqual({ ok: true, faults: [], withheld: [] });
    expect(verifyLedger(JSON.stringify(whole))).toEqual({ ok: true, faults: [], withheld: [] });
  });

  it("without entries is whole too", async () => {
    const empty = await ledgerOf([]);
    expect(empty.head).toEqual({ number: 0, hash: "0".repeat(64) });
    expect((await verify(digest, empty)).ok).toBe(true);
    expect(verifyLedger(JSON.stringify(empty)).ok).toBe(true);
  });

  it("is today, byte for byte, what it was when it was frozen", async () => {
    expect(frozen("good")).toBe(`${taken(canonical(whole as unknown as Json))}\n`);
    expect(frozen("customer")).toBe(`${taken(canonical(edition as unknown as Json))}\n`);
    expect(whole.head).toEqual({ number: 4, hash: "ff94165a7f66ff5a118ae6b532e7301c8b61588482bf007829f7587bb85cc110" });
    for (const name of ["good", "customer"]) {
      expect(verifyLedger(frozen(name)).faults).toEqual([]);
      expect((await verify(digest, JSON.parse(frozen(name)))).faults).toEqual([]);
    }
  });

  it("is whole in whatever order entries arrive, and its head tells the orders apart", async () => {
    const drafts = ["a", "b", "c", "d", "e"].map((id, run) => draft(id, { run }));
    const order = fc.shuffledSubarray(drafts, { minLength: 1 });
    const heads = new Map<string, string>();
    await fc.assert(
      fc.asyncProperty(order, async (some) => {
        const ledger = await ledgerOf(some);
        expect((await verify(digest, ledger)).faults).toEqual([]);
        expect(verifyLedger(JSON.stringify(ledger)).faults).toEqual([]);
        const name = some.map((one) => one.id).join();
        expect(heads.get(ledger.head.hash) ?? name).toBe(name);
        heads.set(ledger.head.hash, name);
      }),
    );
  });
});

describe("one changed byte", () => {
  const cases = [whole, edition].flatMap((ledger, i) =>
    fieldsOf(ledger)
      .filter(({ path }) => !outsideEveryHash(path))
      .map(({ path, value }) => [`${i === 0 ? "whole" : "edition"}: ${path.join("/")}`, ledger, path, value] as const),
  );

  it.each(cases)("is found in %s", async (_name, ledger, path, value) => {
    const other = changed(ledger, path, oneByteOff(value));
    expect(JSON.stringify(other)).not.toBe(JSON.stringify(ledger));
    const { ok, faults } = await verify(digest, other);
    expect(ok).toBe(false);
    expect(faults.map((fault) => fault.code)).toContain(codeFor(ledger, path));
    expect(verifyLedger(JSON.stringify(other)).ok).toBe(false);
  });

  it("anywhere in the file is found by both verifiers, or leaves the value as it was", async () => {
    const text = taken(canonical(edition as unknown as Json));
    const kinds = [...text.matchAll(/"kind":"tolerance-sheet"/g)].map((match) => [match.index + 8, match.index + 23] as const);
    const place = fc.nat(text.length - 1).filter((i) => !kinds.some(([from, to]) => i >= from && i < to));
    await fc.assert(
      fc.asyncProperty(place, fc.integer({ min: 0x20, max: 0x7e }), async (i, unit) => {
        const other = text.slice(0, i) + String.fromCharCode(unit) + text.slice(i + 1);
        let parsed: Json;
        try {
          parsed = JSON.parse(other) as Json;
        } catch {
          expect(verifyLedger(other).ok).toBe(false);
          return;
        }
        const again = canonical(parsed);
        const same = again.ok && again.value === text;
        expect((await verify(digest, parsed)).ok).toBe(same);
        expect(verifyLedger(other).ok).toBe(same);
      }),
      { numRuns: 400 },
    );
  });
});

describe("other changes", () => {
  const [one, two, three, four] = whole.entries as [Ledger["entries"][0], Ledger["entries"][0], Ledger["entries"][0], Ledger["entries"][0]];
  const entry = (path: string, value: unknown): unknown => changed(whole, ["entries", 0, ...path.split("/")], value);
  const { who: _who, ...withoutWho } = one.body;

  it.each<[string, unknown, string, string]>([
    ["the last entry taken away", { ...whole, entries: [one, two, three] }, "ledger-head", "head/number"],
    [
      "the last entry taken away and the head's number with it",
      { ...whole, head: { ...whole.head, number: 3 }, entries: [one, two, three] },
      "ledger-hash",
      "head/hash",
    ],
    ["an entry in the middle taken away", { ...whole, entries: [one, three, four] }, "ledger-number", "entries/1/envelope/number"],
    ["the first entry taken away", { ...whole, entries: [two, three, four] }, "ledger-link", "entries/0/envelope/before"],
    ["two entries exchanged", { ...whole, entries: [one, three, two, four] }, "ledger-link", "entries/1/envelope/before"],
    ["an entry put in twice", { ...whole, entries: [...whole.entries, four] }, "ledger-duplicate-id", "entries/4/envelope/id"],
    ["an id chained twice", twice, "ledger-duplicate-id", "entries/2/envelope/id"],
    ["an entry of another job chained", otherJob, "ledger-job", "entries/1/envelope/job"],
    ["an envelope changed", entry("envelope/received", 5), "ledger-link", "entries/1/envelope/before"],
    ["a part taken away", entry("body", withoutWho), "ledger-part-missing", "entries/0/body/who"],
    ["a part put in", changed(whole, ["entries", 3, "body", "who"], one.body.who), "ledger-part-unexpected", "entries/3/body/who"],
    ["a part of another entry", entry("body/what", two.body.what), "ledger-part-digest", "entries/0/body/what"],
    ["a part emptied", entry("body/what/content", null), "ledger-part-digest", "entries/0/body/what"],
    ["a part withheld without a reason", entry("body/who", { withheld: "" }), "ledger-withheld-reason", "entries/0/body/who/withheld"],
    ["a part withheld and kept at once", entry("body/who/withheld", "edition"), "ledger-shape", "entries/0/body/who"],
    ["a field that no hash holds", entry("body/who/more", 1), "ledger-shape", "entries/0/body/who"],
    ["a field added to an envelope", entry("envelope/more", 1), "ledger-shape", "entries/0/envelope"],
    ["a field added to an entry", entry("more", 1), "ledger-shape", "entries/0"],
    ["a field added to the ledger", changed(whole, ["more"], 1), "ledger-shape", ""],
    ["a salt of capital letters", entry("body/who/salt", "A".repeat(64)), "ledger-shape", "entries/0/body/who/salt"],
    ["half a surrogate pair in a kind", entry("envelope/kind", "\ud800"), "ledger-text-surrogate", "entries/0/envelope/kind"],
    ["half a surrogate pair in a content", entry("body/what/content", "\ud800"), "ledger-text-surrogate", "entries/0/body/what/content"],
    ["a number given as text", entry("envelope/run", "0"), "ledger-shape", "entries/0/envelope/run"],
    ["a time with a fraction", entry("envelope/made", 0.5), "ledger-shape", "entries/0/envelope/made"],
    ["an entry that is nothing", changed(whole, ["entries", 0], null), "ledger-shape", "entries/0"],
    ["a ledger of a later format", { format: 2, anything: true }, "ledger-format", "format"],
    ["an attached version changed", changed(whole, ["versions", 0, "content"], {}), "ledger-version-digest", "versions/0/digest"],
  ])("%s", async (_name, other, code, place) => {
    const { ok, faults } = await verify(digest, other);
    expect(ok).toBe(false);
    expect(faults).toContainEqual(expect.objectContaining({ code, place }));
    expect(verifyLedger(JSON.stringify(other)).ok).toBe(false);
  });
});

describe("anything at all", () => {
  const neverGood = async (input: unknown): Promise<void> => {
    const { ok, faults } = await verify(digest, input);
    expect(ok).toBe(false);
    expect(faults.length).toBeGreaterThan(0);
  };

  it("is refused without a throw, whatever value it is", async () => {
    await fc.assert(fc.asyncProperty(fc.anything({ withBigInt: true, withDate: true, withMap: true, withSparseArray: true }), neverGood));
  });

  it("is refused without a throw, whatever stands in the place of one field", async () => {
    const paths = fieldsOf(whole).flatMap(({ path }) => path.map((_step, i) => path.slice(0, i + 1)));
    const place = fc.constantFrom(...paths).filter((path) => !outsideEveryHash(path));
    await fc.assert(
      fc.asyncProperty(place, fc.oneof(fc.jsonValue(), fc.anything()), async (path, value) => {
        const other = changed(whole, path, value);
        const { ok } = await verify(digest, other);
        // An array of versions may be any array of good versions, the empty one too.
        const stays = path.join() === "versions" || JSON.stringify(other) === JSON.stringify(whole);
        if (!stays) expect(ok).toBe(false);
      }),
    );
  });

  it("is refused when it is nested past what the stack holds", async () => {
    const deep: unknown = JSON.parse("[".repeat(200_000) + "]".repeat(200_000));
    await neverGood(deep);
    await neverGood(changed(whole, ["entries", 0, "body", "what", "content"], deep));
    expect(verifyLedger("[".repeat(200_000) + "]".repeat(200_000)).ok).toBe(false);
  });
});

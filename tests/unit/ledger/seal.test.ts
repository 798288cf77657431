import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { arrivalFaults, chain, entryDigest, envelopeHash, genesis, headAfter, type Json, partDigest, seal } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { draft, saltFrom, taken } from "./sample.ts";

describe("seal", () => {
  it("takes a part's digest over the salt's 32 bytes and the canonical content", async () => {
    const salt = saltFrom("one");
    const byHand = createHash("sha256").update(Buffer.from(salt, "hex")).update('{"a":1,"b":"é"}', "utf8").digest("hex");
    expect(await partDigest(digest, { salt, content: { b: "é", a: 1 } })).toEqual({ ok: true, value: byHand });
  });

  it("gives equal contents different digests under different salts", async () => {
    const [one, two] = [saltFrom("one"), saltFrom("two")];
    expect(taken(await partDigest(digest, { salt: one, content: "dry" }))).not.toBe(
      taken(await partDigest(digest, { salt: two, content: "dry" })),
    );
  });

  it("keeps in the envelope no content, only digests of the parts that there are", async () => {
    const { sealed, body } = taken(await seal(digest, draft("e", { contents: { what: "dry", where: null } })));
    expect(Object.keys(sealed.parts)).toEqual(["what", "where"]);
    expect(Object.keys(body)).toEqual(["what", "where"]);
    expect(JSON.stringify(sealed)).not.toContain("dry");
  });

  it.each([
    ["no salt", { salts: {} }, "ledger-salt", "salts/what"],
    ["a short salt", { salts: { ...draft("e").salts, who: "ab" } }, "ledger-salt", "who/salt"],
    ["a salt used twice", { salts: { what: saltFrom("s"), who: saltFrom("s"), where: saltFrom("t") } }, "ledger-salt", "salts/who"],
    ["an empty id", { id: "" }, "ledger-shape", "id"],
    ["a time with a fraction", { made: 1.5 }, "ledger-shape", "made"],
    ["a running number below 0", { run: -1 }, "ledger-shape", "run"],
    ["half a surrogate pair", { kind: "\ud800" }, "ledger-text-surrogate", "kind"],
    ["a content that is no JSON", { contents: { what: { a: undefined } as unknown as Json } }, "ledger-not-json", "what/content/a"],
    ["a content that is not a number", { contents: { what: [Number.NaN] } }, "number-not-finite", "what/content/0"],
  ])("refuses %s", async (_name, more, code, place) => {
    expect(await seal(digest, draft("e", more))).toMatchObject({ ok: false, refusal: { code, place } });
  });
});

describe("the entry's digest", () => {
  it("is the same at every sending, and for the envelope in the chain", async () => {
    const { sealed, digest: sent } = taken(await seal(digest, draft("e")));
    const first = chain(genesis, sealed, 10, 20);
    const again = chain({ number: 7, hash: saltFrom("head") }, sealed, 1000, 2000);
    for (const one of [sealed, first, again]) expect(taken(await entryDigest(digest, one))).toBe(sent);
    expect(taken(await envelopeHash(digest, first))).not.toBe(taken(await envelopeHash(digest, again)));
  });

  it("differs when anything that the phone made differs", async () => {
    const others = [
      { job: "other" },
      { kind: "answered" },
      { run: 1 },
      { made: 1 },
      { author: { person: "p-2", phone: "t-4b" } },
      { contents: { what: 1 } },
    ];
    const all = await Promise.all([{}, ...others].map(async (more) => taken(await seal(digest, draft("e", more))).digest));
    expect(new Set(all).size).toBe(all.length);
  });
});

describe("the chain", () => {
  it("gives the next number and carries the head's hash", async () => {
    const { sealed } = taken(await seal(digest, draft("e")));
    const first = chain(genesis, sealed, 10, 20);
    expect(first).toMatchObject({ number: 1, before: "0".repeat(64), sent: 10, received: 20 });
    const head = taken(await headAfter(digest, first));
    expect(chain(head, sealed, 10, 30)).toMatchObject({ number: 2, before: taken(await envelopeHash(digest, first)) });
  });

  it("hashes no envelope that verifying would refuse", async () => {
    const { sealed } = taken(await seal(digest, draft("e")));
    expect(await envelopeHash(digest, chain(genesis, sealed, 10.5, 20))).toMatchObject({
      refusal: { code: "ledger-shape", place: "sent" },
    });
    expect(await envelopeHash(digest, { ...chain(genesis, sealed, 1, 2), more: 1 } as never)).toMatchObject({
      refusal: { code: "ledger-shape" },
    });
  });
});

describe("an entry as it arrives", () => {
  const arriving = async (): Promise<{ sealed: unknown; body: Record<string, unknown> }> => {
    const { sealed, body } = taken(await seal(digest, draft("e")));
    return { sealed, body: structuredClone(body) as Record<string, unknown> };
  };
  const codes = async (sealed: unknown, body: unknown): Promise<string[]> =>
    (await arrivalFaults(digest, sealed, body)).map((fault) => `${fault.code} ${fault.place}`);

  it("is taken when every part is what its digest says", async () => {
    const { sealed, body } = await arriving();
    expect(await codes(sealed, body)).toEqual([]);
  });

  it("is refused otherwise, with the place", async () => {
    const { sealed, body } = await arriving();
    const { who, ...without } = body;
    expect(who).toBeDefined();
    expect(await codes(sealed, without)).toEqual(["ledger-part-missing body/who"]);
    expect(await codes({ ...(sealed as object), parts: {} }, { who })).toEqual(["ledger-part-unexpected body/who"]);
    expect(await codes(sealed, { ...body, who: { withheld: "edition" } })).toEqual(["ledger-part-missing body/who"]);
    expect(await codes(sealed, { ...body, what: { salt: saltFrom("x"), content: 1 } })).toEqual(["ledger-part-digest body/what"]);
    expect(await codes({ ...(sealed as object), format: 2 }, body)).toEqual(["ledger-format sealed/format"]);
    expect(await codes(null, [])).toEqual(["ledger-shape sealed", "ledger-shape body"]);
  });
});

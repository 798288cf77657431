import { describe, expect, it } from "vitest";
import { customerEdition, isWithheld, type LedgerEntry, partNames, verify, type WithheldReason, withhold } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { verifyLedger } from "../../helpers/verifier.ts";
import { sampleLedger, taken } from "./sample.ts";

const rule = { wholeBodies: ["note-for-office", "moved-out", "moved-in"] };

describe("withholding", () => {
  it("takes the content and the salt out and leaves envelope and chain as they were", async () => {
    const ledger = await sampleLedger();
    const [first, ...rest] = ledger.entries as [LedgerEntry, ...LedgerEntry[]];
    const edited = taken(withhold(first, ["what"], "erasure"));
    expect(edited.envelope).toBe(first.envelope);
    expect(edited.body).toEqual({ ...first.body, what: { withheld: "erasure" } });
    const verified = await verify(digest, { ...ledger, entries: [edited, ...rest] });
    expect(verified).toEqual({ ok: true, faults: [], withheld: [{ number: 1, part: "what", reason: "erasure" }] });
  });

  it("invents no part that was not there and keeps the first reason", async () => {
    const { entries } = await sampleLedger();
    const second = entries[1] as LedgerEntry;
    const erased = taken(withhold(second, ["who", "what"], "erasure"));
    expect(Object.keys(erased.body)).toEqual(["what"]);
    expect(taken(withhold(erased, partNames, "edition")).body).toEqual({ what: { withheld: "erasure" } });
  });

  it.each(["", "because", "Edition", "edition "])("refuses the reason '%s'", async (reason) => {
    const { entries } = await sampleLedger();
    expect(withhold(entries[0] as LedgerEntry, ["who"], reason as WithheldReason)).toMatchObject({
      refusal: { code: "ledger-withheld-reason" },
    });
  });
});

describe("the customer's edition", () => {
  it("withholds who and where of every entry, whole bodies of the named kinds only, and both verifiers list it alike", async () => {
    const whole = await sampleLedger();
    const edition = customerEdition(whole, rule);
    const expected = [
      { number: 1, part: "who", reason: "edition" },
      { number: 1, part: "where", reason: "edition" },
      { number: 3, part: "what", reason: "edition" },
      { number: 3, part: "who", reason: "edition" },
    ];
    expect(await verify(digest, edition)).toEqual({ ok: true, faults: [], withheld: expected });
    expect(verifyLedger(JSON.stringify(edition))).toEqual({ ok: true, faults: [], withheld: expected });
    expect(edition.head).toEqual(whole.head);
    expect(edition.entries.map((entry) => entry.envelope)).toEqual(whole.entries.map((entry) => entry.envelope));
    const kept = edition.entries.flatMap(({ envelope, body }) => (body.what && !isWithheld(body.what) ? [envelope.number] : []));
    expect(kept).toEqual([1, 2]);
  });

  it("holds no name, no position and no salt of what it withholds", async () => {
    const whole = await sampleLedger();
    const text = JSON.stringify(customerEdition(whole, rule));
    for (const entry of whole.entries) {
      for (const part of [entry.body.who, entry.body.where]) {
        if (part && !isWithheld(part)) expect(text).not.toContain(part.salt);
      }
    }
    expect(text).not.toContain("Name of one");
    expect(text).not.toContain("call before ten");
  });
});

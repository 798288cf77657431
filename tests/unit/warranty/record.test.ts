import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { handingOverText } from "#core/record/index.ts";
import { coversOf, readTerms, warrantyClocks } from "#core/warranty/index.ts";
import { bench, book, pictureItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const sheet = bench({ items: [pictureItem("water-runs", { marks: "first running" })] });
const settings = {
  name: "Stillwater Yard Works",
  warranty: {
    text: { en: ["Ours, word for word."], es: ["Las nuestras, palabra por palabra."] },
    terms: [
      { part: "Pump", months: 36, starts: "handover", register: { days: 30, with: "its maker" }, conditions: "Keep the receipt." },
      { part: "Old basin", months: 12, starts: "handover" },
    ],
    acceptedByUseAfterDays: 14,
  },
} as const satisfies Json;
const at = (text: string) => ({ at: Date.parse(text) });

describe("the record of what was handed over", () => {
  it("prints a delivery without a signature: how, when, where, why, and the objection word for word", () => {
    const b = book(sheet);
    const objection = "“The lip is crooked,” she said.";
    b.enter("delivered-unsigned", { how: "by mail", day: "2026-06-10", to: "4 Elm Street", because: "declined", objection });
    expect(recordOf(b.ledger(), { settings }).signature).toEqual([
      { label: "Handed over", text: "Delivered without a signature on 10 June 2026: the customer declined to sign" },
      { label: "How", text: "by mail" },
      { label: "Where to", text: "4 Elm Street" },
      { label: "Objection, word for word", text: objection },
    ]);
    expect(b.handingOver().missing).not.toContainEqual(expect.objectContaining({ reason: { key: "signature.missing", figures: {} } }));
  });

  it("prints acceptance by use, before and after its day", () => {
    const b = book(sheet);
    b.enter("in-use", { since: "2026-06-10", how: "seen running" });
    // issued on 1 July: used since the 10th, and 14 days make the 24th
    expect(recordOf(b.ledger(), { settings }).signature).toEqual([
      { label: "Handed over", text: "Accepted by use on 24 June 2026, after the days that the company's terms name" },
    ]);
    const sooner = { ...settings, warranty: { ...settings.warranty, acceptedByUseAfterDays: 60 } };
    expect(recordOf(b.ledger(), { settings: sooner }).signature[0]?.text).toContain("from 9 August 2026 on");
    const none = { ...settings, warranty: { terms: [] } };
    expect(recordOf(b.ledger(), { settings: none }).signature[0]?.text).toBe("not signed yet");
  });

  it("says of a kept part that it has no cover, and lists what is to be registered as left to do", () => {
    const b = book(sheet);
    b.enter("signed", { relation: "owner of the house", language: "en" }, at("2026-06-05T16:00:00Z"));
    b.enter("part-kept", { part: "old basin", why: "its wall is good" });
    const model = recordOf(b.ledger(), { settings });
    expect(model.warranty.terms).toEqual([
      {
        part: "Pump",
        lasts: "36 months",
        starts: "at handing over",
        ends: "last day 5 June 2029",
        conditions: "Keep the receipt. To be registered with its maker by 5 July 2026.",
      },
      {
        part: "Old basin",
        lasts: "old part that stayed, no cover",
        starts: "",
        ends: "",
        conditions: "An old part that stayed, no cover: its wall is good.",
      },
    ]);
    expect(model.leftToDo).toEqual([{ text: "Register Pump with its maker", by: "Stillwater Yard Works, 5 July 2026", state: "open" }]);
    b.enter("part-registered", { part: "Pump", day: "2026-06-30", number: "R-7" });
    const later = recordOf(b.ledger(), { settings });
    expect(later.leftToDo).toEqual([]);
    expect(later.warranty.terms[0]?.conditions).toBe("Keep the receipt. Registered with its maker on 30 June 2026 R-7.");
  });
});

describe("the text that is shown to the one who signs", () => {
  const b = book(sheet);
  b.enter("part-kept", { part: "Old basin", why: "its wall is good" });
  const terms = readTerms(settings.warranty);
  const covers = coversOf(warrantyClocks(jobState(b.ledger())), terms);
  const shown = (language: "en" | "es") =>
    handingOverText({
      language,
      job: "Elm Street 4",
      terms,
      covers,
      leftToDo: [
        { entry: "one", text: "Leak tests", by: "2026-06-20", done: false },
        { entry: "two", text: "Lights", by: "soon", done: true },
      ],
    });

  it("is the company's own terms in the language shown, and what is left to do", () => {
    expect(shown("en")).toBe(
      [
        "Handing over: Elm Street 4",
        "I have received the as-buried record and was shown how to run the installation.",
        "Warranty, as the company's terms say:",
        "Ours, word for word.",
        "Pump: 36 months, at handing over. Keep the receipt.",
        "Old basin: An old part that stayed, no cover: its wall is good",
        "Left to do:",
        "Leak tests (20 June 2026)",
        "",
      ].join("\n"),
    );
    expect(shown("es")).toContain("Las nuestras, palabra por palabra.\nPump: 36 meses, al entregar. Keep the receipt.\n");
  });

  it("prints with the signature by its language and digest", () => {
    const text = shown("es");
    const textDigest = createHash("sha256").update(text, "utf8").digest("hex");
    b.enter("signed", { relation: "tenant", language: "es", text, textDigest });
    expect(recordOf(b.ledger(), { settings }).signature.at(-1)).toEqual({
      label: "Text that was shown, in Spanish",
      text: `SHA-256 ${textDigest}`,
    });
  });
});

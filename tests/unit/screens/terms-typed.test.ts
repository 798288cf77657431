import { describe, expect, test } from "vitest";
import type { Json } from "#core/ledger/index.ts";
import { termsShown, termsTyped } from "#core/screens/office/after-work/terms-typed.ts";
import { hundredths, minutesOf, typedFact } from "#core/screens/office/after-work/typed-fields.ts";
import { readTerms } from "#core/warranty/index.ts";
import { warrantySettings } from "#core/wire/index.ts";

describe("the company's terms on their page", () => {
  const saved = {
    text: { en: ["One.", "Two."], es: ["Uno."] },
    terms: [
      { part: "Pump", months: 36, starts: "date of sale", register: { days: 30, with: "its maker" }, services: ["winter", "spring"] },
      {
        part: "Work",
        months: 24,
        starts: "handover",
        conditions: "Ours.",
        replacement: "new term",
        newOwner: "passes on when told",
        newOwnerDays: 60,
      },
    ],
    services: [
      { kind: "return visit", daysAfter: 30, within: 14 },
      { kind: "winter", month: 10, day: 31, within: 45 },
      { kind: "yearly", within: 20 },
    ],
    acceptedByUseAfterDays: 14,
  } as const;

  const again = (changed: Readonly<Record<string, string>> = {}, parts = 2) => {
    const shown = termsShown(readTerms(saved as unknown as Json));
    const text = (name: string): string => changed[name] ?? shown.get(name) ?? "";
    return termsTyped(
      {
        text,
        all: (name) =>
          text(name)
            .split(",")
            .filter((one) => one !== ""),
      },
      parts,
    );
  };

  test("saved without a change they are the same, and the edge takes them", () => {
    expect(again()).toEqual(saved);
    expect(warrantySettings.safeParse(again()).success).toBe(true);
  });

  test("a part whose name is emptied is left out, one added comes last, and what is emptied is said no more", () => {
    const typed = again(
      { "part-0": " ", "part-2": "Liner", "months-2": "120", "starts-2": "handover", acceptedDays: "", "month winter": "" },
      3,
    );
    expect(typed.terms?.map(({ part }) => part)).toEqual(["Work", "Liner"]);
    expect(typed.acceptedByUseAfterDays).toBeUndefined();
    expect(typed.services?.map(({ kind }) => kind)).toEqual(["return visit", "yearly"]);
  });
});

describe("what is typed of a callback", () => {
  test("money is kept in hundredths, hours in minutes", () => {
    expect(["12", "12.5", "12,05", "0.99"].map(hundredths)).toEqual([1200, 1250, 1205, 99]);
    expect(["2", "2:30", "0:05"].map(minutesOf)).toEqual([120, 150, 5]);
  });

  test("names stand apart, and what stayed empty is not said", () => {
    const typed: Readonly<Record<string, string>> = { name: " Alma ", cause: "x", confirmed: "no", partsCost: "" };
    const fields = [
      { name: "name", word: "callbacks-name", who: true },
      { name: "cause", word: "callbacks-cause" },
      { name: "confirmed", word: "callbacks-confirmed", reads: "yes" },
      { name: "partsCost", word: "callbacks-parts-typed", reads: "money" },
    ] as const;
    expect(typedFact(fields, (name) => typed[name] ?? "")).toEqual({ what: { cause: "x", confirmed: false }, who: { name: "Alma" } });
  });
});

import { describe, expect, test } from "vitest";
import type { Json } from "#core/ledger/index.ts";
import { pictureWhat, takenAt } from "#core/screens/field/picture/what.ts";
import { readWhat } from "#core/wire/whats.ts";

const photo = { sha256: "a".repeat(64), type: "image/jpeg", bytes: 1_234_567, taken: 1_780_315_200_000 };
const day = 86_400_000;

describe("the words of a picture's entry", () => {
  test("hash, bytes, type and time are those of the original; tag and caption stand where there are any", () => {
    expect(pictureWhat({ item: "trench", tag: "2" }, { photo, judged: { verdict: "readable" } }, "  from the bank ")).toEqual({
      item: "trench",
      tag: "2",
      photo: "a".repeat(64),
      bytes: 1_234_567,
      type: "image/jpeg",
      taken: 1_780_315_200_000,
      judged: "readable",
      caption: "from the bank",
    });
  });

  test("what the phone could not judge has no judgement, and one that it found poor says so without the reason", () => {
    expect(pictureWhat({ item: "trench" }, { photo, judged: { verdict: "not judged" } }, "")).not.toHaveProperty("judged");
    expect(pictureWhat({ item: "trench" }, { photo }, "")).not.toHaveProperty("judged");
    expect(pictureWhat({ item: "trench" }, { photo, judged: { verdict: "unreadable", reason: "blurred" } }, "")).toMatchObject({
      judged: "unreadable",
    });
    expect(pictureWhat({ item: "trench" }, { photo }, " ")).not.toHaveProperty("caption");
  });

  test("the edge admits it, a photo of a type that the phone does not know included", () => {
    const admitted = (what: unknown): boolean => readWhat("picture-taken", what as Json, "entry").ok;
    const unknown = { ...photo, type: "" };
    for (const chosen of [{ photo, judged: { verdict: "readable" as const } }, { photo: unknown }])
      expect(admitted(pictureWhat({ item: "trench" }, chosen, ""))).toBe(true);
    expect(admitted({ ...pictureWhat({ item: "trench" }, { photo }, ""), type: "" })).toBe(false);
  });
});

describe("when a chosen file was taken", () => {
  const now = 1_780_315_200_000;
  test("its own time stays where it is plausible", () => {
    expect(takenAt(now - 3 * 3_600_000, now)).toBe(now - 3 * 3_600_000);
    expect(takenAt(now, now)).toBe(now);
    expect(takenAt(now - 29 * day, now)).toBe(now - 29 * day);
  });
  test("a time to come, one of long ago and none at all give the moment of choosing", () => {
    for (const odd of [now + 1, now - 31 * day, 0, -1, Number.NaN, 1.5]) expect(takenAt(odd, now)).toBe(now);
  });
});

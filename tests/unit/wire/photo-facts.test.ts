import { describe, expect, it } from "vitest";
import { photoFacts } from "#core/wire/index.ts";

const FACTS = {
  sha: "a".repeat(64),
  bytes: 10,
  orientation: 1,
  taken: { text: "2025-06-01T10:00:00", source: "original", offset: "-06:00", offsetFrom: "tag" },
  satelliteTime: "2025-06-01T16:00:00Z",
  position: { latitude: 397_333_333, longitude: -1_049_833_333, accuracy: 4500 },
  notes: ["position-missing"],
  sharpness: 12,
};
const taken = (more: object) => ({ ...FACTS, taken: { text: "2025-06-01T10:00:00", source: "original", ...more } });
const placed = (more: object) => ({ ...FACTS, position: { ...FACTS.position, ...more } });

/** A code of a card with one corner there. */
const carded = (corner: readonly unknown[], text = "AB1A4NFRYDK9ZHN6078G") => ({
  ...FACTS,
  cards: [{ text, corners: [corner, [50, 0], [50, 50], [0, 50]] }],
});

describe("E09 no number that is none reaches the data base", () => {
  it("takes facts as media writes them, and keeps what else they hold", () => {
    expect(photoFacts.parse(FACTS)).toEqual(FACTS);
    expect(photoFacts.parse(taken({}))).toEqual(taken({}));
    const none = { ...FACTS, taken: null, satelliteTime: null, position: null };
    expect(photoFacts.parse(none)).toEqual(none);
    const cards = carded([0, -3]);
    expect(photoFacts.parse(cards)).toEqual(cards);
  });
  it.each([
    // What NaN and Infinity become in JSON.
    ["no latitude", placed({ latitude: null })],
    ["no accuracy", placed({ accuracy: null })],
    ["NaN", placed({ longitude: Number.NaN })],
    ["degrees with a fraction", placed({ latitude: 39.7 })],
    ["beyond the pole", placed({ latitude: 900_000_001 })],
    ["an accuracy of nothing", placed({ accuracy: 0 })],
    ["half a position", { ...FACTS, position: { latitude: 1 } }],
    ["an instant for a wall clock", taken({ text: "2025-06-01T10:00:00Z" })],
    ["a month that is none", taken({ text: "2025-13-01T10:00:00" })],
    ["an offset of nobody", taken({ offset: "+02:07", offsetFrom: "tag" })],
    ["an offset that nothing told", taken({ offset: "+02:00" })],
    ["a teller without an offset", taken({ offsetFrom: "tag" })],
    ["an orientation that is none", { ...FACTS, orientation: 9 }],
    ["no orientation", { ...FACTS, orientation: null }],
    ["a corner with a fraction", carded([0.5, 0])],
    ["a corner that is no number", carded([null, 0])],
    ["a corner of one number", carded([0])],
    ["a code of another length", carded([0, 0], "AB1A")],
    ["no notes", { ...FACTS, notes: undefined }],
  ])("refuses %s", (_case, facts) => {
    expect(photoFacts.safeParse(facts).success).toBe(false);
  });
});

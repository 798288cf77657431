import { expect, it } from "vitest";
import { readSheet } from "#core/job/index.ts";
import type { PhotoFacts, PhotoNote, Position, Taken } from "#core/photo/index.ts";
import { cameraKnown } from "#core/record/index.ts";
import { book } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";
import file from "../../samples/sheets/ten-items.json" with { type: "json" };

const sha256 = "c".repeat(64);
const taken: Taken = { text: "2026-06-01T08:00:00", source: "original" };
const position: Position = { latitude: 397_333_333, longitude: -1_049_833_333 };

const facts = (more: Partial<PhotoFacts>): PhotoFacts => ({
  sha: sha256,
  bytes: 10,
  type: "image/jpeg",
  width: 40,
  height: 30,
  orientation: 1,
  taken: null,
  satelliteTime: null,
  position: null,
  notes: [],
  sharpness: 1,
  exposure: null,
  renditions: [{ name: "print", width: 40, height: 30, bytes: 5, sha256 }],
  ...more,
});

/** What the record prints about when and where under a picture of which these facts were read. */
function printed(read: PhotoFacts): { readonly when: string; readonly place: string } {
  const sheet = readSheet(file);
  if (!sheet.ok) throw new Error(sheet.refusal.place);
  const b = book(sheet.value);
  b.enter("tag-named", { set: "gate-post", tag: "left", hiddenBy: "pour-concrete", description: "by the old wall" });
  b.picture({ item: "hole-with-rule", tag: "left" }, { photo: sha256 });
  const photos = { [sha256]: { rendition: `kettle/renditions/${sha256}/print.jpg`, ...cameraKnown(read) } };
  const picture = recordOf(b.ledger(), { photos }).steps.flatMap(({ pictures }) => pictures)[0];
  if (!picture) throw new Error("no picture in the record");
  return { when: picture.when, place: picture.place };
}

it("E05 says that the photo itself has no time, beside the phone's and the office's", () => {
  const { when } = printed(facts({ notes: ["time-zeros", "position-missing"] }));
  expect(when).toMatch(/^made .+; no time in the photo itself$/);
  expect(printed(facts({ taken, notes: ["offset-missing"] })).when).not.toContain("no time");
});

it.each<[PhotoNote, string]>([
  ["position-missing", "no position in the photo"],
  ["metadata-missing", "no position in the photo"],
  ["position-withheld", "position withheld by the phone"],
  ["position-zero", "position in the photo cannot be used"],
  ["position-broken", "position in the photo cannot be used"],
  ["position-unsigned", "position in the photo cannot be used"],
  ["metadata-cut-off", "position in the photo cannot be used"],
])("B01, E09, E11 tells a place that is none by why: %s", (note, place) => {
  expect(printed(facts({ taken, notes: [note] })).place).toBe(place);
});

it("prints that there is a place, never which", () => {
  const { place } = printed(facts({ taken, position }));
  expect(place).toBe("position in the photo (kept by the company)");
});

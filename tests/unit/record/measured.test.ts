import { describe, expect, test } from "vitest";
import type { Whats } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { printedTexts } from "#core/proof/index.ts";
import type { PhotoKnown, PictureView, RecordModel } from "#core/record/index.ts";
import { read, storedRecordModel } from "#core/wire/index.ts";
import { releasedPage } from "#templates/record/index.ts";
import { type Book, bench, book, lengthItem, pictureItem } from "../../helpers/job.ts";
import { photo, tapped, measuredWords as words } from "../../helpers/photo-measured.ts";
import { type Recording, recordOf } from "../../helpers/record.ts";

const sheet = bench({ items: [lengthItem("the-length", { onOnePlane: true }), pictureItem("the-view")] });
const printed: PhotoKnown = { rendition: `company/renditions/${photo}/print.jpg`, width: 2048, height: 1536 };
const recorded = (enter: (b: Book) => void, how: Recording = {}): RecordModel => {
  const b = book(sheet);
  enter(b);
  return recordOf(b.ledger(), { photos: { [photo]: printed }, ...how });
};
/** Tape, picture and what was measured in it. */
const whole =
  (typed = "20 0/16", more: Partial<Whats["photo-measured"]> = {}) =>
  (b: Book): void => {
    b.picture("the-view", { photo });
    b.read("the-length", typed);
    b.enter("photo-measured", words(more));
  };
const readingOf = ({ steps }: RecordModel) => steps.flatMap(({ readings }) => readings).find(({ title }) => title === "the-length");
const pictureOf = ({ steps }: RecordModel): PictureView | undefined =>
  steps.flatMap(({ pictures }) => pictures).find((one) => one.photo === photo);

describe("what a photo measured, in the record", () => {
  test("beside the tape's reading, which stays as typed, and under the photo", () => {
    const model = recorded(whole());
    // u of the tape: place 1588 / 1.7321, step of 1588 / (2 x 1.7321), tape of class II 500 / 1.7321: 1,065 together, U 2.13 mm = 0.084 in, up to 3/32
    // of the photo the place's 917 too, 250 um of the ruler's 254 mm 289, taps of 1/4 pixel 95: U between 1.92 mm and 5/64 in (1.98)
    const says = /^Tape: 20 in ± 3\/32 in; in the photo: 20 in ± 5\/64 in\. They agree\.$/;
    expect(readingOf(model)).toMatchObject({ typed: "20 0/16 in", inPhoto: expect.stringMatching(says) });
    expect(pictureOf(model)?.measured?.says).toEqual([`the-length. ${readingOf(model)?.inPhoto}`]);
    const places = printedTexts(model).map(({ place }) => place.replace(/\/\d+/g, ""));
    expect(places).toEqual(
      expect.arrayContaining(["steps/readings/inPhoto", "steps/pictures/measured/says", "steps/pictures/measured/lines/text"]),
    );
  });

  test("a line with a tick at each end, drawn where it was tapped, its length on a plate above", () => {
    const { lines: [line] = [], ...of } = pictureOf(recorded(whole()))?.measured ?? {};
    expect(of).toMatchObject({ width: 4000, height: 3000 });
    // half a tick is a sixtieth of 4000 px
    expect(line?.strokes).toEqual([
      [
        { x: 1047.5, y: 1875 },
        { x: 2952.5, y: 1875 },
      ],
      ...[1047.5, 2952.5].map((x) => [
        { x, y: 1808.3 },
        { x, y: 1941.7 },
      ]),
    ]);
    // the plate is 1.4 x 4000 / 30 = 186.7 high and lies a tick over the line: 1875 - 66.7 - 186.7
    expect(line?.plate).toMatchObject({ y: 1621.7, height: 186.7 });
    expect(line?.at.x).toBe(2000);
    expect((line?.plate.x ?? 0) + (line?.plate.width ?? 0) / 2).toBeCloseTo(2000, 0);
    expect(line?.text).toBe("20 in ± 5/64 in");
  });

  test("of a short line the ticks are short: a third of 40 mm, which is 150 px, and some", () => {
    const short = { from: tapped(0, 100_000), to: tapped(40_000, 100_000) };
    const { strokes } = pictureOf(recorded(whole("1 9/16", short)))?.measured?.lines[0] ?? {};
    // 0.35 x 150 = 52.5
    expect(strokes?.[1]).toEqual([
      { x: 2000, y: 1822.5 },
      { x: 2000, y: 1927.5 },
    ]);
  });

  test("beside a line that stands the plate lies to its right, and at the picture's edge within it", () => {
    const plates = [0, 400_000].map((x) => {
      const to = { from: tapped(x, -50_000), to: tapped(x, 150_000) };
      return pictureOf(recorded(whole("7 7/8", to)))?.measured?.lines[0]?.plate;
    });
    // a tick to the right of 2000; and of 2000 + 0.4 x 3750 = 3500, where the picture ends at 4000
    expect(plates[0]?.x).toBeCloseTo(2066.7, 1);
    expect((plates[1]?.x ?? 0) + (plates[1]?.width ?? 0)).toBeCloseTo(4000, 0);
  });

  test("they disagree, or the photo cannot tell and says why, in both languages", () => {
    const off = /^Tape: 18 1\/2 in ± 3\/32 in; in the photo: 20 in ± 5\/64 in\. They do not agree\.$/;
    expect(readingOf(recorded(whole("18 8/16")))?.inPhoto).toMatch(off);
    // without the ruler the print is doubtful by 6 %: 508 x 0.06 x 2 / 1.7321 = 35.2 mm = 1.386 in, up to 1 7/16; 1/4 in would be of use
    const vague = (b: Book): void => {
      const { ruler: _, ...unruled } = words() as Record<string, Json>;
      b.picture("the-view", { photo });
      b.read("the-length", "20");
      b.enter("photo-measured", unruled);
    };
    expect(readingOf(recorded(vague, { language: "es" }))?.inPhoto).toBe(
      "Cinta: 20 in ± 5/8 in; en la foto: 20 in ± 1 7/16 in. La foto no lo puede decir: habría que saberlo a ± 1/4 in.",
    );
    const alone = recorded((b) => {
      b.picture("the-view", { photo });
      b.enter("photo-measured", words());
    });
    expect(pictureOf(alone)?.measured?.says).toEqual([
      expect.stringMatching(/^the-length\. In the photo: 20 in ± [\d/]+ in\. The photo cannot tell: no reading by tape counts here\.$/),
    ]);
  });

  test("that it was measured more than once is said, and that the last one is compared", () => {
    const twice = recorded((b) => {
      whole()(b);
      b.enter("photo-measured", words());
    });
    expect(readingOf(twice)?.inPhoto).toMatch(/They agree\. Measured in photos 2 times; the last one is compared\.$/);
  });

  test("a photo that is no picture of the step prints there under its reading's title", () => {
    const model = recorded((b) => {
      b.read("the-length", "20");
      b.enter("photo-measured", words());
    });
    expect(pictureOf(model)).toMatchObject({ title: "the-length", rendition: printed.rendition, measured: { lines: [{}] } });
  });
});

describe("where the photo does not print as it was measured", () => {
  const sentenceAlone = (model: RecordModel) => {
    expect(readingOf(model)?.inPhoto).toContain("They agree.");
    expect(pictureOf(model)?.measured).toMatchObject({ lines: [], says: [expect.stringContaining("They agree.")] });
  };
  const blurred = (regions?: Json) => (b: Book) => {
    whole()(b);
    b.enter("region-blurred", { photo, rendition: "d".repeat(64), reason: "A face.", ...(regions === undefined ? {} : { regions }) });
  };

  test("not there, or turned: the sentence without the line", () => {
    sentenceAlone(recorded(whole(), { photos: {} }));
    sentenceAlone(recorded(whole(), { photos: { [photo]: { ...printed, width: 1536, height: 2048 } } }));
  });

  test("an end of the line is blurred, or nobody wrote down what is: the sentence without the line", () => {
    // the first end is at 1047.5 / 4000 = 0.262 and 1875 / 3000 = 0.625
    sentenceAlone(recorded(blurred([{ x: 250_000, y: 600_000, width: 50_000, height: 50_000 }])));
    sentenceAlone(recorded(blurred()));
  });

  test("something else is blurred: the line stays", () => {
    const model = recorded(blurred([{ x: 800_000, y: 0, width: 100_000, height: 100_000 }]));
    expect(pictureOf(model)?.measured?.lines).toHaveLength(1);
  });
});

test("a job in whose photos nobody measured has nothing of it in its record's model", () => {
  const model = recorded((b) => {
    b.picture("the-view", { photo });
    b.read("the-length", "20");
  });
  expect(pictureOf(model) && Object.hasOwn(pictureOf(model) as object, "measured")).toBe(false);
  expect(readingOf(model) && Object.hasOwn(readingOf(model) as object, "inPhoto")).toBe(false);
});

test("it comes back from the store as it went in, and stands on the page for the receiver's phone", () => {
  const model = recorded(whole());
  const again = read(storedRecordModel, JSON.parse(JSON.stringify(model)), "record-unreadable", "record");
  expect(again).toEqual({ ok: true, value: model });
  const page = releasedPage(model, { pdf: "/pdf", photo: () => ({ address: "/photo" }) });
  expect(page).toContain('<svg role="img" aria-label="the-length. Tape: 20 in');
  expect(page).toContain('viewBox="0 0 4000 3000"');
  expect(page).toContain("M1047.5 1875L2952.5 1875M1047.5 1808.3L1047.5 1941.7");
  const without = releasedPage(recorded(whole(), { photos: {} }), { pdf: "/pdf", photo: () => ({ missing: "not here" }) });
  expect(without).not.toContain('<svg role="img" aria-label="the-length');
  expect(without).toContain("They agree.");
});

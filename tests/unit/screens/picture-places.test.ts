import { describe, expect, test } from "vitest";
import { picturePlaces } from "#core/screens/field/picture/places.ts";
import type { ToldOnPhone } from "#core/screens/field/told.ts";
import { answerItem, type Book, bench, book, lengthItem, minute, pictureItem } from "../../helpers/job.ts";

const sheet = bench({
  steps: [
    { id: "step-one", number: 1, title: { en: "One" }, cautions: [] },
    { id: "step-two", number: 2, title: { en: "Two" }, cautions: [] },
  ],
  tagSets: [{ id: "joint", title: { en: "Joint" }, least: 1, coverings: ["bury-it", "close-it"] }],
  items: [
    pictureItem("arrival", { weight: "asked" }),
    pictureItem("if-there", { weight: "if you have it" }),
    pictureItem("for-closing", { holds: "close-it" }),
    pictureItem("for-burying"),
    lengthItem("a-depth"),
    answerItem("a-word"),
    pictureItem("each-joint", { step: "step-two", holds: "by tag", tags: "joint" }),
    pictureItem("the-end", { step: "step-two", weight: "asked" }),
  ],
});

const places = (b: Book) => {
  const { state, clearances } = b.done(b.clock());
  const { open, taken } = picturePlaces({ now: { state, clearances } } as unknown as ToldOnPhone);
  const named = (all: typeof open): string[] => all.map(({ item, tag }) => (tag === undefined ? item.id : `${item.id} ${tag}`));
  return { open: named(open), taken: named(taken) };
};

describe("where a picture can belong", () => {
  test("what holds the next covering comes first, then what holds the others, then the steps in their order; what is not insisted on comes last", () => {
    const b = book(sheet);
    b.tag("joint", "A", "bury-it");
    b.tag("joint", "B", "close-it");
    const { open, taken } = places(b);
    expect(taken).toEqual([]);
    expect(new Set(open.slice(0, 2))).toEqual(new Set(["for-burying", "each-joint A"]));
    expect(new Set(open.slice(2, 4))).toEqual(new Set(["for-closing", "each-joint B"]));
    expect(open.slice(4)).toEqual(["arrival", "the-end", "if-there"]);
  });

  test("a covering that is announced comes before the others", () => {
    const b = book(sheet);
    b.enter("covering-announced", { covering: "close-it", about: b.clock() + 60 * minute });
    expect(places(b).open[0]).toBe("for-closing");
  });

  test("what is taken stands apart, one that the phone found unreadable is asked for again", () => {
    const b = book(sheet);
    b.picture("for-burying");
    b.picture("arrival");
    b.picture("for-closing", { judged: "unreadable" });
    const { open, taken } = places(b);
    expect(taken).toEqual(["arrival", "for-burying"]);
    expect(open[0]).toBe("for-closing");
  });

  test("readings and answers are no place for a picture of this kind", () => {
    const all = places(book(sheet));
    expect([...all.open, ...all.taken].filter((name) => ["a-depth", "a-word"].includes(name))).toEqual([]);
  });
});

import { describe, expect, test } from "vitest";
import { aboutToBeBuried, type BuriedLine } from "#core/job/index.ts";
import { answerItem, type Book, bench, book, computed, lengthItem, minute, pictureItem, start } from "../../helpers/job.ts";

const sheet = bench({
  coverings: [
    { id: "bury-it", title: { en: "bury it" }, done: { en: "buried" }, cautions: [], leavesOpen: { en: "the hole" } },
    { id: "close-it", title: { en: "close it" }, done: { en: "closed" }, cautions: [] },
  ],
  items: [
    answerItem("pit-dry"),
    answerItem("asked-only", { weight: "asked" }),
    answerItem("nice-to-have", { weight: "if you have it" }),
    pictureItem("pit-seen"),
    lengthItem("cord-beside-wire", { weight: "asked" }),
    answerItem("left-fenced", { weight: "asked", tonight: "holes" }),
  ],
});

const linesOf = (b: Book, now?: number): readonly BuriedLine[] => {
  const { state, all, clearances } = computed(b.ledger(), now);
  return aboutToBeBuried(state, all, clearances).lines;
};
const kinds = (b: Book) => linesOf(b).map(({ is }) => is);

describe("what a job says before something is buried", () => {
  test("a job in which nothing was done has nothing to say", () => {
    expect(linesOf(book(sheet))).toEqual([]);
  });

  test("announced and not yet clear: when, what, and how many things hold it; clear, it is no line", () => {
    const b = book(sheet);
    const about = start + 90 * minute;
    b.enter("covering-announced", { covering: "bury-it", about });
    expect(linesOf(b)[0]).toEqual({ is: "announced", covering: "bury-it", title: { en: "bury it" }, count: 2, at: about });
    expect(aboutToBeBuried(...partsOf(b)).soonest).toBe(about);
    b.answer("pit-dry", "is-dry");
    b.picture("pit-seen");
    expect(kinds(b)).not.toContain("announced");
    // close-it waits for nothing: announced, it has nothing to say either
    b.enter("covering-announced", { covering: "close-it", about });
    expect(kinds(b)).not.toContain("announced");
  });

  test("covered on a not yet, later doubted, and covered without a word are three things", () => {
    const onNotYet = book(sheet);
    onNotYet.covered("bury-it", "not yet");
    expect(kinds(onNotYet)[0]).toBe("covered on a not yet");

    const doubted = book(sheet);
    doubted.answer("pit-dry", "is-dry");
    const picture = doubted.picture("pit-seen");
    doubted.covered("bury-it", "clear", {}, { id: "buried-so" });
    expect(kinds(doubted)).not.toContain("later doubted");
    doubted.enter("picture-looked-at", { picture, says: "does not show it" }, { phone: "desk" });
    const [line] = linesOf(doubted);
    expect(line).toMatchObject({ is: "later doubted", covering: "bury-it", count: 1 });
    expect(kinds(doubted)).toContain("outside");

    const unsaid = book({ ...sheet, items: [...sheet.items, answerItem("after", { weight: "asked", needsHidden: "bury-it" })] });
    unsaid.answer("after", "is-dry");
    expect(kinds(unsaid)[0]).toBe("covered unsaid");
  });

  test("what was decided goes, and so does what only waits once its time has come", () => {
    const b = book(sheet);
    b.answer("pit-dry", "is-wet");
    b.picture("pit-seen");
    b.covered("bury-it", "not yet");
    expect(kinds(b)).toEqual(expect.arrayContaining(["covered on a not yet", "outside"]));
    b.enter("concession", { about: { item: "pit-dry" }, extent: "this pit", reason: "drained" }, { phone: "desk" });
    expect(kinds(b)).not.toContain("outside");
    expect(kinds(b)).not.toContain("covered on a not yet");
  });

  test("asked and outside is a line, what one may have is none, and what cannot be made out has its own name", () => {
    const b = book(sheet);
    b.answer("asked-only", "is-wet");
    b.answer("nice-to-have", "is-wet");
    b.picture("pit-seen", { judged: "unreadable" });
    const found = linesOf(b).filter(({ about }) => about !== undefined);
    expect(found.map(({ is, about }) => [is, about?.item])).toEqual([
      ["outside", "asked-only"],
      ["unreadable", "pit-seen"],
    ]);
  });

  test("pictures to look at are one line, and a photo that nobody looked at is named by its hash", () => {
    const b = book(sheet);
    const first = b.picture("pit-seen", { photo: "1".repeat(64) });
    b.picture("pit-seen", { photo: "2".repeat(64) });
    expect(linesOf(b).find(({ is }) => is === "to look at")).toMatchObject({ count: 2, covering: "bury-it" });
    b.enter("picture-looked-at", { picture: first, says: "shows it" }, { phone: "desk" });
    expect(linesOf(b).find(({ is }) => is === "to look at")).toMatchObject({ count: 1 });
    expect(aboutToBeBuried(...partsOf(b)).unlooked).toEqual(["2".repeat(64)]);
  });

  test("the open hole: missing, then as it is left; covered it is open no more", () => {
    const b = book(sheet);
    b.answer("pit-dry", "is-dry");
    const open = () => linesOf(b).find(({ is }) => is === "open tonight");
    expect(open()).toEqual({ is: "open tonight", covering: "bury-it", title: { en: "the hole" }, tonight: "missing" });
    b.answer("left-fenced", "is-wet");
    expect(open()).toMatchObject({ tonight: "not so", at: b.clock() });
    b.answer("left-fenced", "is-dry");
    expect(open()).toMatchObject({ tonight: "entered", at: b.clock() });
    b.covered("bury-it");
    expect(open()).toBeUndefined();
  });

  test("each phone that enters at the work, as last heard; not the desk, and not one that ended its visit", () => {
    const b = book(sheet);
    b.answer("pit-dry", "is-dry", { phone: "phone-two" });
    const heard = b.clock();
    b.enter("concession", { about: { item: "pit-dry" }, extent: "x", reason: "y" }, { phone: "desk" });
    b.answer("asked-only", "is-dry", { phone: "phone-three" });
    const phones = () => linesOf(b).filter(({ is }) => is === "phone silent");
    expect(phones()).toEqual([
      { is: "phone silent", phone: "phone-two", person: "person of phone-two", at: heard },
      { is: "phone silent", phone: "phone-three", person: "person of phone-three", at: b.clock() },
    ]);
    b.enter("visit-ended", {}, { phone: "phone-two" });
    expect(phones().map(({ phone }) => phone)).toEqual(["phone-three"]);
  });

  test("handed over, only coverings and open ground speak", () => {
    const b = book(sheet);
    b.answer("asked-only", "is-wet");
    b.covered("bury-it", "not yet");
    b.enter("signed", { relation: "owner of the house", language: "en" });
    expect(kinds(b)).toEqual(["covered on a not yet"]);
  });
});

function partsOf(b: Book): Parameters<typeof aboutToBeBuried> {
  const { state, all, clearances } = computed(b.ledger());
  return [state, all, clearances];
}

import { describe, expect, test } from "vitest";
import { besideStep, type CardSays, cardsSaid, whereTo } from "#core/screens/field/cards/where-to.ts";
import { picturePlaces } from "#core/screens/field/picture/places.ts";
import type { ToldOnPhone } from "#core/screens/field/told.ts";
import { type Book, bench, book, pictureItem } from "../../helpers/job.ts";

const sheet = bench({
  steps: [
    { id: "one-place", number: 1, title: { en: "One place" }, cautions: [] },
    { id: "two-places", number: 2, title: { en: "Two places" }, cautions: [] },
    { id: "no-place", number: 3, title: { en: "No place" }, cautions: [] },
  ],
  items: [
    pictureItem("alone", { step: "one-place" }),
    pictureItem("left", { step: "two-places" }),
    pictureItem("right", { step: "two-places" }),
  ],
});
const placesOf = (b: Book) => {
  const { state, clearances } = b.done(b.clock());
  return picturePlaces({ now: { state, clearances } } as unknown as ToldOnPhone);
};
const job = "this";
const card = (step?: string, of = job): CardSays => ({ is: "card", job: of, ...(step === undefined ? {} : { step }) });
const nothing: CardSays = { is: "nothing" };
const notHere: CardSays = { is: "job not here" };

describe("codes as cards", () => {
  const code = (place: 0 | 1, step?: string) =>
    ({ is: "card", job, paper: "letter", place, ...(step === undefined ? {} : { step }) }) as const;

  test("the codes of one card are one card, whichever were read", () => {
    expect(cardsSaid([code(0, "one-place"), code(1, "one-place")])).toEqual([card("one-place")]);
    expect(cardsSaid([code(0)])).toEqual([card()]);
    expect(cardsSaid([code(0, "one-place"), code(0)])).toEqual([card("one-place"), card()]);
    expect(cardsSaid([])).toEqual([]);
  });

  test("whatever names no job of this phone is of one that is not here, or tells nothing", () => {
    expect(cardsSaid([{ is: "job unknown" }])).toEqual([notHere]);
    for (const is of ["another company", "altered", "step unknown", "other version", "not a card"] as const)
      expect(cardsSaid([{ is }])).toEqual([nothing]);
    expect(cardsSaid([{ is: "altered" }, { is: "another company" }, { is: "job unknown" }])).toEqual([nothing, notHere]);
  });
});

describe("beside the step that a picture is taken for", () => {
  const beside = (...cards: readonly CardSays[]) => besideStep(cards, { job, step: "one-place" });

  test("no card says nothing, and one that tells nothing moves nothing", () => {
    expect(beside()).toEqual({ is: "no card" });
    expect(beside(nothing)).toEqual({ is: "line", line: "nothing" });
    expect(beside(notHere)).toEqual({ is: "line", line: "job not here" });
    expect(beside(nothing, notHere)).toMatchObject({ is: "line" });
  });

  test("a card of this step, or of this job for any step, is a line", () => {
    expect(beside(card("one-place"))).toEqual({ is: "line", line: "step" });
    expect(beside(card())).toEqual({ is: "line", line: "job" });
    expect(beside(card(), card("one-place"))).toEqual({ is: "line", line: "step" });
    expect(beside(card("one-place"), nothing)).toEqual({ is: "line", line: "step" });
  });

  test("a card of another step or of another job asks, also where its step has the same name", () => {
    expect(beside(card("two-places"))).toEqual({ is: "asks", several: false, elsewhere: [{ job, step: "two-places" }] });
    expect(beside(card("one-place", "other"))).toEqual({ is: "asks", several: false, elsewhere: [{ job: "other", step: "one-place" }] });
    expect(beside(card(undefined, "other"))).toEqual({ is: "asks", several: false, elsewhere: [{ job: "other" }] });
  });

  test("several cards ask which, by those that are not of this step", () => {
    expect(beside(card("one-place"), card("two-places"), card(undefined, "other"))).toEqual({
      is: "asks",
      several: true,
      elsewhere: [{ job, step: "two-places" }, { job: "other" }],
    });
  });
});

describe("a photo that waits for its place", () => {
  const named = (to: ReturnType<typeof whereTo>) => (to.is === "asks" ? { ...to, first: to.first.map(({ item }) => item.id) } : to);
  const to = (b: Book, ...cards: readonly CardSays[]) => named(whereTo(cards, job, placesOf(b)));

  test("without a card, or with one that tells nothing, everything is as it was", () => {
    const b = book(sheet);
    expect(to(b)).toEqual({ is: "as usual" });
    expect(to(b, nothing)).toEqual({ is: "as usual", line: "nothing" });
    expect(to(b, notHere)).toEqual({ is: "as usual", line: "job not here" });
    expect(to(b, card())).toEqual({ is: "as usual", line: "job" });
    expect(to(b, card("no-place"))).toEqual({ is: "as usual", line: "job" });
  });

  test("its only card names a step with one open place: it goes there", () => {
    const found = whereTo([card("one-place")], job, placesOf(book(sheet)));
    expect(found).toMatchObject({ is: "here", step: "one-place", place: { item: { id: "alone" } } });
  });

  test("where that place is taken, a further picture is asked about and does not go by itself", () => {
    const b = book(sheet);
    b.picture("alone");
    expect(to(b, card("one-place"))).toEqual({ is: "asks", several: false, steps: ["one-place"], first: ["alone"], elsewhere: [] });
  });

  test("a step with two open places asks between them; with one of them taken it goes to the other", () => {
    const b = book(sheet);
    expect(to(b, card("two-places"))).toEqual({
      is: "asks",
      several: false,
      steps: ["two-places"],
      first: ["left", "right"],
      elsewhere: [],
    });
    b.picture("left");
    expect(to(b, card("two-places"))).toMatchObject({ is: "here", place: { item: { id: "right" } } });
  });

  test("a card of another job asks, its step along with it", () => {
    const asked = { is: "asks", several: false, steps: [], first: [] };
    expect(to(book(sheet), card("one-place", "other"))).toEqual({ ...asked, elsewhere: [{ job: "other", step: "one-place" }] });
    expect(to(book(sheet), card(undefined, "other"))).toEqual({ ...asked, elsewhere: [{ job: "other" }] });
  });

  test("several cards never go by themselves: the places of their steps come first, other jobs beside them", () => {
    expect(to(book(sheet), card("one-place"), card("two-places"), card(undefined, "other"))).toEqual({
      is: "asks",
      several: true,
      steps: ["one-place", "two-places"],
      first: ["alone", "left", "right"],
      elsewhere: [{ job: "other" }],
    });
    expect(to(book(sheet), card("one-place"), nothing)).toMatchObject({ is: "asks", several: true, first: ["alone"] });
    expect(to(book(sheet), nothing, notHere)).toMatchObject({ is: "as usual" });
  });
});

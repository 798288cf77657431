import { describe, expect, test } from "vitest";
import { admit } from "#core/job/index.ts";
import { bench, book, lengthItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const sheet = bench({
  items: [lengthItem("gap-read")],
  checks: [
    {
      id: "gap-small",
      step: "step-one",
      title: { en: "Gap" },
      function: "single value",
      items: ["gap-read"],
      kind: "length",
      weight: "holds",
      holds: "bury-it",
      aim: 0,
      upper: 25_400,
      customerAccepts: true,
    },
  ],
});
const accepted = { about: { check: "gap-small" }, extent: "this edge", reason: "seen from the house only" };
const desk = { phone: "desk" };

describe("what the customer lives with", () => {
  test("is accepted as built by the office only with the customer's word", () => {
    const { state } = book(sheet).done();
    const asked = (what: object) => {
      const entry = { id: "x", digest: "x", kind: "concession", author: { person: "p", phone: "desk" }, run: 1, made: 0, what };
      const outcome = admit(state, entry as never, "office");
      return outcome.ok ? "ok" : `${outcome.refusal.code} ${outcome.refusal.place}`;
    };
    expect(asked(accepted)).toBe("entry-customer-word what/customerSaid");
    expect(asked({ ...accepted, customerSaid: "  " })).toBe("entry-customer-word what/customerSaid");
    expect(asked({ ...accepted, customerSaid: "leave it" })).toBe("ok");
    // what the sheet does not ask it for needs none
    expect(asked({ ...accepted, about: { item: "gap-read" } })).toBe("ok");
  });

  test("the record says it word for word", () => {
    const b = book(sheet);
    b.read("gap-read", "3");
    b.enter("concession", { ...accepted, customerSaid: "leave it, I like it" }, desk);
    const [decision] = recordOf(b.ledger()).accepted;
    expect(decision?.says).toContain('"leave it, I like it"');
    expect(decision?.says).toContain("this edge");
  });
});

describe("a word by telephone that nobody had given", () => {
  test("clears nothing any more, and the record says who was asked", () => {
    const b = book(sheet);
    b.read("gap-read", "3");
    const word = b.enter("go-ahead", { covering: "bury-it", reason: "rain", role: "crew" });
    expect(b.clearance("bury-it").state).toBe("on word");
    b.enter("go-ahead-denied", { goAhead: word, reason: "the office was shut" }, desk);
    expect(b.clearance("bury-it").state).toBe("not yet");
    const [decision] = recordOf(b.ledger()).accepted;
    expect(decision?.says).toBe("rain (asked afterwards, nobody had given it: the office was shut)");
    // an earlier one that was given stands
    const earlier = book(sheet);
    earlier.read("gap-read", "3");
    earlier.enter("go-ahead", { covering: "bury-it", reason: "dry", role: "crew" });
    const later = earlier.enter("go-ahead", { covering: "bury-it", reason: "rain", role: "crew" });
    earlier.enter("go-ahead-denied", { goAhead: later, reason: "no" }, desk);
    expect(earlier.clearance("bury-it").state).toBe("on word");
  });
});

describe("an authority's word and others' papers", () => {
  test("are listed as told, with number, day and whose word it is, and never as judged here", () => {
    const b = book(sheet);
    const photo = "a".repeat(64);
    b.enter("inspected-by-authority", { what: "wiring", state: "passed", number: "E-17", day: "2026-06-01", photo }, desk);
    b.enter("done-by-others", { what: "outlet set", step: "step-one", paper: "c".repeat(64) }, desk);
    const { papers, paperPictures } = recordOf(b.ledger());
    const [inspected, others] = papers.slice(-2);
    expect(inspected?.text).toMatch(/^passed, E-17, 2026-06-01, as told by .*; not judged here$/);
    expect(others?.text).toContain("SHA-256 cccccccccccccccc");
    expect(paperPictures).toHaveLength(1);
  });
});

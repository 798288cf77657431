import { describe, expect, test } from "vitest";
import { admit, factKinds, jobState, type Writer, writers } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { answerItem, bench, book, inch, lengthItem, pictureItem, sheetDigest, type What } from "../../helpers/job.ts";

const sheet = bench({
  tagSets: [
    { id: "pipe-joint", title: { en: "Joint" }, least: 0, coverings: ["bury-it"] },
    { id: "edge-length", title: { en: "Edge" }, least: 0, coverings: ["close-it"] },
  ],
  items: [
    lengthItem("depth-read"),
    lengthItem("rod-read", { instrument: "bench-laser", inSetUp: true }),
    lengthItem("cold-read", { quantity: "temperature", unit: { inch: "°F", metric: "°C" } }),
    pictureItem("bed-seen"),
    answerItem("is-it-dry"),
    pictureItem("joint-seen", { tags: "pipe-joint", holds: "by tag" }),
    lengthItem("joint-read", { tags: "pipe-joint", holds: "by tag" }),
  ],
  checks: [
    {
      id: "joint-check",
      step: "step-one",
      title: { en: "J" },
      function: "single value",
      items: ["joint-read"],
      kind: "length",
      weight: "holds",
      holds: "by tag",
      aim: 10 * inch,
      lower: 8 * inch,
    },
  ],
});
const b = book(sheet, { broken: { format: 1 } });
b.tag("pipe-joint", "A", "bury-it");
b.tag("edge-length", "E", "close-it");
b.read("depth-read", "10 0/16", {}, { id: "the-depth" });
b.enter("concession", { about: { item: "depth-read" }, extent: "all", reason: "as is" }, { id: "the-concession" });
b.enter("does-not-apply", { about: { item: "bed-seen" }, reason: "no bed", role: "crew" }, { id: "the-word" });
b.enter(
  "corrected",
  { entry: { id: "the-concession", digest: "" }, reason: "extent", replace: { extent: "one" } },
  { id: "the-correction" },
);
const { state } = b.done();

const entry = (kind: string, what: Json | undefined) => ({
  id: "new",
  digest: "new",
  kind,
  author: { person: "p", phone: "q" },
  run: 999,
  made: 0,
  ...(what === undefined ? {} : { what }),
});
const asked = (kind: string, what: Json | undefined, writer: Writer = "crew", of = state): string => {
  const outcome = admit(of, entry(kind, what), writer);
  return outcome.ok ? "ok" : `${outcome.refusal.code} ${outcome.refusal.place}`;
};
const reading = (more: What = {}): What => ({ item: "depth-read", typed: "10 0/16", unit: "in", ...more });
const picture = (more: What = {}): What => ({ item: "bed-seen", photo: "0".repeat(64), bytes: 1, type: "image/jpeg", ...more });
const about = (named: What, more: What = {}): What => ({ about: named, reason: "so it is", ...more });

describe("let in", () => {
  test.each([
    ["reading-taken", reading(), "crew"],
    ["reading-taken", reading({ placing: "soft-place", instrument: "bench-tape", distance: { typed: "40", unit: "ft" } }), "crew"],
    ["reading-taken", reading({ item: "rod-read", setUp: "not here yet" }), "crew"],
    ["reading-taken", reading({ item: "cold-read", typed: "-4", unit: "°F" }), "crew"],
    ["reading-taken", reading({ item: "joint-read", tag: "A" }), "crew"],
    ["picture-taken", picture(), "crew"],
    // of the tape, beside what was read on it
    ["picture-taken", picture({ item: "depth-read" }), "crew"],
    ["answered", { item: "is-it-dry", choice: "is-wet" }, "crew"],
    ["does-not-apply", about({ item: "depth-read" }, { role: "crew" }), "crew"],
    ["could-not-be-taken", about({ check: "joint-check", tag: "A" }), "crew"],
    ["left-to-do", { text: "later", by: "2026-07-01" }, "crew"],
    ["opened-up-again", { covering: "bury-it", exposed: "all", reason: "leak" }, "crew"],
    ["concession", about({ item: "depth-read" }, { extent: "all" }), "office"],
    [
      "design-set",
      { figures: { depthWanted: { typed: "12", unit: "in" }, somethingElse: { typed: "x", unit: "y" }, basinDepth: "unknown" } },
      "office",
    ],
    ["version-taken-over", { thing: "sheet", name: "bench", number: 1, digest: sheetDigest }, "office"],
    ["corrected", { entry: { id: "not here yet", digest: "" }, reason: "x", replace: { typed: "nonsense" } }, "crew"],
    ["corrected", { entry: { id: "the-depth", digest: "" }, reason: "x", withdrawn: true }, "crew"],
    ["corrected", { entry: { id: "the-depth", digest: "" }, reason: "x", replace: { typed: "9 1/2" } }, "crew"],
    ["corrected", { entry: { id: "the-correction", digest: "" }, reason: "x", replace: { extent: "none" } }, "office"],
    ["moved-out", { entries: [{ id: "the-depth", digest: "" }], to: "other", reason: "x" }, "program"],
    ["a-kind-of-the-future", { whatever: [1] }, "crew"],
    ["a-kind-of-the-future", undefined, "program"],
  ] as const)("%s %j", (kind, what, writer) => {
    expect(asked(kind, what as Json, writer)).toBe("ok");
  });
});

describe("refused", () => {
  test.each([
    // who
    ["entry-role kind", "concession", about({ item: "depth-read" }, { extent: "all" }), "crew"],
    ["entry-role kind", "moved-in", { from: "x", reason: "x", entries: [] }, "company owner"],
    ["entry-role what/role", "does-not-apply", about({ item: "depth-read" }, { role: "office" }), "crew"],
    ["entry-role what/role", "go-ahead", { covering: "bury-it", reason: "x", role: "crew" }, "office"],
    ["entry-role what/entry", "corrected", { entry: { id: "the-concession", digest: "" }, reason: "x", withdrawn: true }, "crew"],
    ["entry-role what/entry", "corrected", { entry: { id: "the-correction", digest: "" }, reason: "x", withdrawn: true }, "crew"],
    [
      "entry-role what/replace/role",
      "corrected",
      { entry: { id: "the-word", digest: "" }, reason: "x", replace: { role: "office" } },
      "crew",
    ],
    // shape
    ["entry-shape what", "answered", undefined, "crew"],
    ["entry-shape what", "answered", null, "crew"],
    ["entry-shape what", "answered", [], "crew"],
    ["entry-shape what", "answered", { item: 5, choice: "is-dry" }, "crew"],
    ["entry-shape what/replace", "corrected", { entry: { id: "the-depth", digest: "" }, reason: "x", replace: { typed: 5 } }, "crew"],
    // what it names
    ["entry-unknown-item what/item", "reading-taken", reading({ item: "no-such" }), "crew"],
    ["entry-unknown-item what/item", "picture-taken", picture({ item: "is-it-dry" }), "crew"],
    ["entry-unknown-item what/item", "received-otherwise", picture({ item: "no-such", how: "post" }), "office"],
    ["entry-unknown-item what/choice", "answered", { item: "is-it-dry", choice: "is-damp" }, "crew"],
    ["entry-unknown-item what/placing", "reading-taken", reading({ placing: "thin-air" }), "crew"],
    ["entry-unknown-item what/instrument", "reading-taken", reading({ instrument: "naked-eye" }), "crew"],
    ["entry-unknown-item what/instrument", "set-up-made", { instrument: "naked-eye" }, "crew"],
    ["entry-unknown-item what/about", "rework-asked", about({ item: "no-such" }), "office"],
    ["entry-unknown-item what/about", "could-not-be-taken", about({}), "crew"],
    ["entry-unknown-item what/about", "could-not-be-taken", about({ item: "depth-read", check: "joint-check" }), "crew"],
    [
      "entry-unknown-item what/exposed/1",
      "opened-up-again",
      { covering: "bury-it", exposed: [{ item: "bed-seen" }, { item: "no-such" }], reason: "x" },
      "crew",
    ],
    [
      "entry-unknown-item what/about/0",
      "go-ahead",
      { covering: "bury-it", reason: "x", role: "crew", about: [{ check: "no-such" }] },
      "crew",
    ],
    ["entry-unknown-item what/about", "left-to-do", { text: "x", by: "2026-07-01", about: { item: "no-such" } }, "crew"],
    ["entry-unknown-tag what/tag", "picture-taken", picture({ item: "joint-seen" }), "crew"],
    ["entry-unknown-tag what/tag", "picture-taken", picture({ item: "joint-seen", tag: "B" }), "crew"],
    ["entry-unknown-tag what/tag", "picture-taken", picture({ item: "joint-seen", tag: "E" }), "crew"],
    ["entry-unknown-tag what/tag", "picture-taken", picture({ tag: "A" }), "crew"],
    ["entry-unknown-tag what/about/tag", "concession", about({ check: "joint-check", tag: "E" }, { extent: "all" }), "office"],
    ["entry-unknown-tag what/about/tag", "concession", about({ item: "depth-read", tag: "A" }, { extent: "all" }), "office"],
    ["entry-unknown-tag what/set", "tag-named", { set: "no-such", tag: "A", hiddenBy: "bury-it" }, "crew"],
    ["entry-unknown-covering what/hiddenBy", "tag-named", { set: "pipe-joint", tag: "B", hiddenBy: "close-it" }, "crew"],
    [
      "entry-unknown-covering what/covering",
      "covered",
      { covering: "no-such", shown: "clear", lines: [], sheet: "", rules: 1, restedOn: [] },
      "crew",
    ],
    ["entry-unknown-covering what/covering", "covering-announced", { covering: "no-such", about: 0 }, "crew"],
    ["entry-unknown-covering what/covering", "opened-up-again", { covering: "no-such", exposed: "all", reason: "x" }, "crew"],
    ["entry-unknown-covering what/covering", "go-ahead", { covering: "no-such", reason: "x", role: "crew" }, "crew"],
    ["entry-unknown-setup what/setUp", "reading-taken", reading({ item: "rod-read" }), "crew"],
    ["entry-unknown-version what/digest", "version-taken-over", { thing: "sheet", name: "x", number: 1, digest: "f".repeat(64) }, "office"],
    ["entry-unknown-version what/digest", "version-taken-over", { thing: "sheet", name: "x", number: 1, digest: "constructor" }, "office"],
    ["sheet-shape sheet/id", "version-taken-over", { thing: "sheet", name: "x", number: 1, digest: "broken" }, "office"],
    // what was typed
    ["reading-denominator what/typed", "reading-taken", reading({ typed: "1 1/3" }), "crew"],
    ["reading-empty what/typed", "reading-taken", reading({ typed: "" }), "crew"],
    ["reading-sign what/typed", "reading-taken", reading({ typed: "-4 1/2" }), "crew"],
    [
      "reading-denominator what/replace/typed",
      "corrected",
      { entry: { id: "the-depth", digest: "" }, reason: "x", replace: { typed: "1 1/3" } },
      "crew",
    ],
    [
      "entry-unknown-tag what/replace/tag",
      "corrected",
      { entry: { id: "the-depth", digest: "" }, reason: "x", replace: { item: "joint-read" } },
      "crew",
    ],
    [
      "reading-not-understood what/distance/typed",
      "set-up-made",
      { instrument: "bench-laser", distance: { typed: "?", unit: "ft" } },
      "crew",
    ],
    [
      "reading-unit-kind what/figures/depthWanted/typed",
      "design-set",
      { figures: { depthWanted: { typed: "4 h", unit: "in" } } },
      "office",
    ],
  ] as const)("%s: %s %j", (expected, kind, what, writer) => {
    expect(asked(kind, what as unknown as Json, writer)).toBe(expected);
  });

  test("whatever names the sheet, while there is none; what does not is let in", () => {
    const none = jobState({ entries: [], versions: {} });
    expect(asked("reading-taken", reading(), "crew", none)).toBe("entry-unknown-version job");
    expect(asked("covered", { covering: "bury-it", shown: "clear", lines: [] }, "crew", none)).toBe("entry-unknown-version job");
    expect(asked("note-for-record", { text: "hello" }, "crew", none)).toBe("ok");
    expect(asked("design-set", { figures: { depthWanted: { typed: "?", unit: "in" } } }, "office", none)).toBe("ok");
    expect(asked("left-to-do", { text: "x", by: "2026-07-01", about: { item: "no-such" } }, "crew", none)).toBe("ok");
  });

  test("a refusal's figures say who, or what it was that is not known", () => {
    const refused = admit(state, entry("answered", { item: "no-such", choice: "is-dry" }), "crew");
    expect(refused).toMatchObject({ ok: false, refusal: { figures: { item: "no-such" } } });
  });
});

test("every kind has its writers, and what the program alone writes nobody else may", () => {
  expect(Object.keys(writers).sort()).toEqual([...factKinds].sort());
  for (const kind of factKinds.filter((k) => writers[k].includes("program"))) expect(writers[kind]).toEqual(["program"]);
});

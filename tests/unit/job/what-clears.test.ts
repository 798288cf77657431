import { describe, expect, test } from "vitest";
import { clearance } from "#core/job/index.ts";
import { answerItem, asks, type Book, bench, book, inch, later, lengthItem, pictureItem } from "../../helpers/job.ts";

const other = { id: "last-it", title: { en: "last" }, done: { en: "last" }, cautions: [] };
const sheet = bench({
  coverings: [...bench().coverings, other],
  items: [
    pictureItem("picture-one"),
    answerItem("answer-one"),
    answerItem("answer-may", { mayNotApply: true }),
    lengthItem("depth-read"),
    lengthItem("design-read"),
    answerItem("other-covering", { holds: "close-it" }),
  ],
  checks: [
    {
      id: "depth-check",
      step: "step-one",
      title: { en: "Depth" },
      function: "single value",
      items: ["depth-read"],
      kind: "length",
      weight: "holds",
      holds: "bury-it",
      aim: 10 * inch,
      lower: 8 * inch,
    },
    {
      id: "design-check",
      step: "step-one",
      title: { en: "By design" },
      function: "single value",
      items: ["design-read"],
      kind: "length",
      weight: "holds",
      holds: "bury-it",
      aim: { function: "design figure", figure: "depthWanted" },
      lower: { function: "design figure", figure: "depthWanted", offset: -inch },
      upper: { function: "design figure", figure: "depthWanted", offset: inch },
    },
  ],
});

type Part = "picture-one" | "answer-one" | "answer-may" | "depth-read" | "design-set";

/** Everything that the covering asks, but for one part. */
function job(without?: Part): Book {
  const b = book(sheet);
  if (without !== "design-set") b.enter("design-set", { figures: { depthWanted: { typed: "12", unit: "in" } } });
  if (without !== "picture-one") b.picture("picture-one", {}, { id: "the-picture" });
  if (without !== "answer-one") b.answer("answer-one", "is-dry");
  if (without !== "answer-may") b.answer("answer-may", "is-dry");
  if (without !== "depth-read") b.read("depth-read", "10 0/16", {}, { id: "the-depth" });
  b.read("design-read", "12 0/16");
  return b;
}

const about = (item: string) => ({ about: { item }, reason: "as it is" });
const depthCheck = { about: { check: "depth-check" }, reason: "as it is" };

interface Row {
  readonly row: string;
  readonly without?: Part;
  /** Before: what stands in the way, so that the row alone makes the difference. */
  readonly before?: (b: Book) => void;
  readonly add: (b: Book) => void;
  readonly was: readonly string[];
  readonly state: "clear" | "on word" | "not yet";
  readonly asks?: readonly string[];
  readonly says?: readonly [check: string, key: string];
}

const rows: readonly Row[] = [
  // what clears
  {
    row: "within",
    without: "depth-read",
    add: (b) => b.read("depth-read", "10 0/16"),
    was: ["depth-read"],
    state: "clear",
    says: ["depth-check", "value.within"],
  },
  {
    row: "an accepting answer",
    without: "answer-one",
    add: (b) => b.answer("answer-one", "is-dry"),
    was: ["answer-one"],
    state: "clear",
    says: ["answer-one", "answer.within"],
  },
  {
    row: "a picture that nobody looked at yet",
    without: "picture-one",
    add: (b) => b.picture("picture-one"),
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.not-looked-at"],
  },
  {
    row: "a picture judged readable on the phone",
    without: "picture-one",
    add: (b) => b.picture("picture-one", { judged: "readable" }),
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.not-looked-at"],
  },
  {
    row: "a picture looked at as cannot tell",
    without: "picture-one",
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.cannot-tell"],
    add: (b) => b.enter("picture-looked-at", { picture: b.picture("picture-one"), says: "cannot tell" }),
  },
  {
    row: "a picture looked at as shows it",
    without: "picture-one",
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.shows"],
    add: (b) => b.enter("picture-looked-at", { picture: b.picture("picture-one"), says: "shows it" }),
  },
  {
    row: "a picture received otherwise",
    without: "picture-one",
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.not-looked-at"],
    add: (b) => b.enter("received-otherwise", { item: "picture-one", photo: "9".repeat(64), bytes: 1, type: "image/jpeg", how: "by post" }),
  },
  {
    row: "does not apply, by the crew, where the sheet allows it",
    without: "answer-may",
    was: ["answer-may"],
    state: "clear",
    says: ["answer-may", "item.does-not-apply"],
    add: (b) => b.enter("does-not-apply", { ...about("answer-may"), role: "crew" }),
  },
  {
    row: "does not apply, by the office, where the sheet does not allow it",
    without: "answer-one",
    was: ["answer-one"],
    state: "clear",
    says: ["answer-one", "item.does-not-apply"],
    add: (b) => b.enter("does-not-apply", { ...about("answer-one"), role: "office" }),
  },
  {
    row: "a check does not apply, by the office",
    without: "depth-read",
    was: ["depth-read"],
    state: "clear",
    says: ["depth-check", "item.does-not-apply"],
    add: (b) => b.enter("does-not-apply", { ...depthCheck, role: "office" }),
  },
  {
    row: "a concession on a value outside",
    without: "depth-read",
    before: (b) => b.read("depth-read", "6 0/16"),
    was: ["depth-check"],
    state: "clear",
    says: ["depth-check", "value.outside"],
    add: (b) => b.enter("concession", { ...depthCheck, extent: "this job" }),
  },
  {
    row: "a concession on what was not taken",
    without: "answer-one",
    was: ["answer-one"],
    state: "clear",
    add: (b) => b.enter("concession", { ...about("answer-one"), extent: "this job" }),
  },
  {
    row: "a concession on a reading that a check waits for",
    without: "depth-read",
    was: ["depth-read"],
    state: "clear",
    add: (b) => b.enter("concession", { ...about("depth-read"), extent: "this job" }),
  },
  {
    row: "a departure agreed beforehand that contains the value",
    without: "depth-read",
    before: (b) => b.read("depth-read", "7 0/16"),
    was: ["depth-check"],
    state: "clear",
    says: ["depth-check", "value.outside"],
    add: (b) => b.enter("departure-agreed", { ...depthCheck, lower: 6 * inch }),
  },
  {
    row: "a value within after rework",
    without: "depth-read",
    was: ["depth-read"],
    state: "clear",
    says: ["depth-check", "value.within"],
    before: (b) => {
      b.read("depth-read", "6 0/16");
      b.enter("reworked", { about: { check: "depth-check" }, done: "dug deeper", minutes: 20 });
    },
    add: (b) => b.read("depth-read", "10 0/16"),
  },
  {
    row: "a go-ahead by telephone, until the office confirms",
    without: "answer-one",
    was: ["answer-one"],
    state: "on word",
    add: (b) => b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew" }),
  },
  {
    row: "a go-ahead that names what it is for",
    without: "answer-one",
    was: ["answer-one"],
    state: "on word",
    add: (b) => b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew", about: [{ item: "answer-one" }] }),
  },
  {
    row: "a go-ahead that the office confirmed",
    without: "answer-one",
    was: ["answer-one"],
    state: "clear",
    add: (b) => {
      const given = b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew" });
      b.enter("go-ahead", { covering: "bury-it", reason: "yes", role: "office", confirms: given });
    },
  },
  {
    row: "a go-ahead that the office itself wrote",
    without: "answer-one",
    was: ["answer-one"],
    state: "clear",
    add: (b) => b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "office" }),
  },
  {
    row: "could not be taken, once there is a concession",
    without: "picture-one",
    before: (b) => b.enter("could-not-be-taken", about("picture-one")),
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "item.could-not-be-taken"],
    add: (b) => b.enter("concession", { ...about("picture-one"), extent: "this job" }),
  },
  {
    row: "could not be taken, once there is a go-ahead",
    without: "picture-one",
    before: (b) => b.enter("could-not-be-taken", about("picture-one")),
    was: ["picture-one"],
    state: "on word",
    add: (b) => b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew" }),
  },
  {
    row: "a picture that the phone could not read, seen by a person",
    without: "picture-one",
    before: (b) => b.picture("picture-one", { judged: "unreadable" }, { id: "dark" }),
    was: ["picture-one"],
    state: "clear",
    says: ["picture-one", "picture.shows"],
    add: (b) => b.enter("picture-looked-at", { picture: "dark", says: "shows it" }),
  },
  // what does not clear
  {
    row: "outside",
    add: (b) => b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed: "6 0/16" } }),
    was: [],
    state: "not yet",
    asks: ["depth-check"],
    says: ["depth-check", "value.outside"],
  },
  {
    row: "an answer that does not accept",
    add: (b) => b.answer("answer-one", "is-wet"),
    was: [],
    state: "not yet",
    asks: ["answer-one"],
    says: ["answer-one", "answer.outside"],
  },
  {
    row: "too close to call",
    add: (b) => b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "misread", replace: { typed: "8 0/16" } }),
    was: [],
    state: "not yet",
    asks: ["depth-check"],
    says: ["depth-check", "value.too-close"],
  },
  {
    row: "not taken",
    add: (b) => b.enter("corrected", { entry: { id: "the-depth", digest: "" }, reason: "never read", withdrawn: true }),
    was: [],
    state: "not yet",
    asks: ["depth-read"],
    says: ["depth-check", "check.not-taken"],
  },
  {
    row: "could not be taken",
    without: "picture-one",
    add: (b) => b.enter("could-not-be-taken", about("picture-one")),
    was: ["picture-one"],
    state: "not yet",
    asks: ["picture-one"],
    says: ["picture-one", "item.could-not-be-taken"],
  },
  {
    row: "could not be taken, for a reading that a check reads",
    without: "depth-read",
    add: (b) => b.enter("could-not-be-taken", about("depth-read")),
    was: ["depth-read"],
    state: "not yet",
    asks: ["depth-read"],
    says: ["depth-check", "check.could-not-be-taken"],
  },
  {
    row: "a picture looked at as does not show it",
    add: (b) => b.enter("picture-looked-at", { picture: "the-picture", says: "does not show it" }),
    was: [],
    state: "not yet",
    asks: ["picture-one"],
    says: ["picture-one", "picture.does-not-show"],
  },
  {
    row: "a picture judged unreadable on the phone",
    without: "picture-one",
    add: (b) => b.picture("picture-one", { judged: "unreadable" }),
    was: ["picture-one"],
    state: "not yet",
    asks: ["picture-one"],
    says: ["picture-one", "picture.unreadable"],
  },
  {
    row: "a picture that the phone could not read, looked at as cannot tell",
    without: "picture-one",
    add: (b) => b.enter("picture-looked-at", { picture: b.picture("picture-one", { judged: "unreadable" }), says: "cannot tell" }),
    was: ["picture-one"],
    state: "not yet",
    asks: ["picture-one"],
    says: ["picture-one", "picture.unreadable"],
  },
  {
    row: "a picture that could not be decoded",
    add: (b) => b.enter("picture-read", { photo: "e".repeat(64), facts: { unreadable: { code: "photo-type" } } }),
    without: "picture-one",
    before: (b) => b.picture("picture-one", { photo: "e".repeat(64) }),
    was: [],
    state: "not yet",
    asks: ["picture-one"],
    says: ["picture-one", "picture.unreadable"],
  },
  {
    row: "does not apply, by the crew, where the sheet does not allow it",
    without: "answer-one",
    add: (b) => b.enter("does-not-apply", { ...about("answer-one"), role: "crew" }),
    was: ["answer-one"],
    state: "not yet",
    asks: ["answer-one"],
    says: ["answer-one", "item.not-taken"],
  },
  {
    row: "a limit whose figure nobody said",
    without: "design-set",
    add: () => {},
    was: ["design-check"],
    state: "not yet",
    asks: ["design-check"],
    says: ["design-check", "check.limit-unknown"],
  },
  {
    row: "a limit whose figure is named as unknown",
    add: (b) => b.enter("design-set", { figures: { depthWanted: "unknown" } }),
    was: [],
    state: "not yet",
    asks: ["design-check"],
    says: ["design-check", "check.limit-unknown"],
  },
  {
    row: "a departure that does not contain the value",
    without: "depth-read",
    before: (b) => b.read("depth-read", "5 0/16"),
    add: (b) => b.enter("departure-agreed", { ...depthCheck, lower: 6 * inch }),
    was: ["depth-check"],
    state: "not yet",
    asks: ["depth-check"],
  },
  {
    row: "a departure that contains the value but not its doubt",
    without: "depth-read",
    before: (b) => b.read("depth-read", "6 0/16"),
    add: (b) => b.enter("departure-agreed", { ...depthCheck, lower: 6 * inch }),
    was: ["depth-check"],
    state: "not yet",
    asks: ["depth-check"],
  },
  {
    row: "a departure agreed after the covering",
    without: "depth-read",
    was: ["depth-check"],
    state: "not yet",
    asks: ["depth-check"],
    before: (b) => {
      b.read("depth-read", "7 0/16");
      b.covered("bury-it", "not yet");
    },
    add: (b) => b.enter("departure-agreed", { ...depthCheck, lower: 6 * inch }),
  },
  {
    row: "a concession given before a newer reading",
    without: "depth-read",
    was: [],
    state: "not yet",
    asks: ["depth-check"],
    before: (b) => {
      b.read("depth-read", "6 0/16");
      b.enter("concession", { ...depthCheck, extent: "this job" });
    },
    add: (b) => b.read("depth-read", "6 1/16"),
  },
  {
    row: "a concession given before rework",
    without: "depth-read",
    was: [],
    state: "not yet",
    asks: ["depth-read"],
    before: (b) => {
      b.read("depth-read", "6 0/16");
      b.enter("concession", { ...depthCheck, extent: "this job" });
    },
    add: (b) => b.enter("reworked", { about: { check: "depth-check" }, done: "dug deeper", minutes: 20 }),
  },
  {
    row: "a concession on an answer, given before it was opened up again",
    without: "answer-one",
    was: [],
    state: "not yet",
    asks: ["answer-one"],
    before: (b) => {
      b.answer("answer-one", "is-wet");
      b.enter("concession", { ...about("answer-one"), extent: "this job" });
    },
    add: (b) => b.enter("opened-up-again", { covering: "bury-it", exposed: [{ item: "answer-one" }], reason: "leak" }),
  },
  {
    row: "a go-ahead given before a newer answer",
    without: "answer-one",
    was: [],
    state: "not yet",
    asks: ["answer-one"],
    before: (b) => {
      b.answer("answer-one", "is-wet");
      b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "office" });
    },
    add: (b) => b.answer("answer-one", "is-wet"),
  },
  {
    row: "a go-ahead for another covering",
    without: "answer-one",
    add: (b) => b.enter("go-ahead", { covering: "last-it", reason: "rain coming", role: "office" }),
    was: ["answer-one"],
    state: "not yet",
    asks: ["answer-one"],
  },
  {
    row: "a go-ahead that names something else",
    without: "answer-one",
    add: (b) => b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew", about: [{ item: "picture-one" }] }),
    was: ["answer-one"],
    state: "not yet",
    asks: ["answer-one"],
  },
  {
    row: "a crew's confirmation of its own go-ahead",
    without: "answer-one",
    was: ["answer-one"],
    state: "on word",
    add: (b) => {
      const given = b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew" });
      b.enter("go-ahead", { covering: "bury-it", reason: "yes", role: "crew", confirms: given });
    },
  },
];

describe("what clears, each row by itself", () => {
  test("a job with everything in order is clear, and the other covering is not touched by it", () => {
    const b = job();
    expect(b.clearance("bury-it")).toEqual({ covering: "bury-it", state: "clear", lines: [] });
    expect(asks(b.clearance("close-it"))).toEqual(["other-covering"]);
  });

  test.each(rows)("$row: $state", (row) => {
    const b = job(row.without);
    row.before?.(b);
    expect(asks(b.clearance("bury-it"))).toEqual(row.was);
    row.add(b);
    const after = b.clearance("bury-it");
    expect([after.state, asks(after)]).toEqual([row.state, row.asks ?? []]);
    if (row.says) expect([row.says[0], b.finding(row.says[0]).says.key]).toEqual(row.says);
    expect(asks(b.clearance("close-it"))).toEqual(["other-covering"]);
  });
});

describe("the lines", () => {
  test("ask for the figure that is unknown, and by name", () => {
    const b = job("design-set");
    expect(b.clearance("bury-it").lines[0]?.waysOut[0]).toBe("ask for the figure");
    expect(b.finding("design-check").unknown).toEqual(["depthWanted"]);
  });

  test("name the ways out that fit", () => {
    const ways = (without: Part, add: (b: Book) => void = () => {}) => {
      const b = job(without);
      add(b);
      return b.clearance("bury-it").lines[0]?.waysOut;
    };
    expect(ways("answer-one")).toEqual(["take it", "could not be taken", "call the office", "go-ahead by telephone"]);
    expect(ways("answer-may")).toEqual(["take it", "does not apply", "could not be taken", "call the office", "go-ahead by telephone"]);
    expect(ways("depth-read", (b) => b.read("depth-read", "8 0/16"))?.[0]).toBe("take it again");
    expect(ways("depth-read", (b) => b.read("depth-read", "6 0/16"))?.[0]).toBe("rework it");
    expect(ways("picture-one", (b) => b.enter("could-not-be-taken", about("picture-one")))?.[0]).toBe("take it");
  });

  test("on word: the clearance names the go-ahead on whose word it stands", () => {
    const b = job("answer-one");
    const given = b.enter("go-ahead", { covering: "bury-it", reason: "rain coming", role: "crew" });
    expect(b.clearance("bury-it")).toMatchObject({ state: "on word", onWord: [given], lines: [] });
  });

  test("a covering that the sheet does not have is not clear", () => {
    const { all, state } = job().done();
    expect(clearance(state, all, "no-such", later)).toEqual({ covering: "no-such", state: "not yet", lines: [] });
  });
});

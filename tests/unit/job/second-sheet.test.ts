import { expect, test } from "vitest";
import { admit, readSheet, sheetFaults } from "#core/job/index.ts";
import { asks, book, inch } from "../../helpers/job.ts";
import file from "../../samples/sheets/ten-items.json" with { type: "json" };

test("a sheet of another trade, from its file, runs through entry and clearance", () => {
  expect(sheetFaults(file)).toEqual([]);
  const sheet = readSheet(file);
  if (!sheet.ok) throw new Error(sheet.refusal.place);
  const b = book(sheet.value);
  const clearances = () => b.done().clearances.map((c) => [c.covering, c.state, asks(c)]);
  expect(clearances()).toEqual([
    ["pour-concrete", "not yet", ["gate-post"]],
    ["bury-footing", "not yet", ["footing-seen", "mix-ticket", "mix-bag", "top-below-soil"]],
  ]);
  b.tag("gate-post", "left", "pour-concrete");
  const post = (item: string) => ({ item, tag: "left" });
  expect(clearances()[0]).toEqual([
    "pour-concrete",
    "not yet",
    ["hole-with-rule left", "stone-under left", "post-plumb left", "post-braced left", "hole-deep left"].sort(
      (x, y) => order(x) - order(y),
    ),
  ]);
  b.picture(post("hole-with-rule"));
  b.picture(post("post-braced"));
  b.answer(post("post-plumb"), "it-is");
  b.enter("does-not-apply", { about: post("stone-under"), reason: "rock bottom", role: "crew" });
  b.read(post("hole-deep"), "33 8/16");
  expect(clearances()[0]).toEqual(["pour-concrete", "not yet", ["hole-depth left"]]);
  expect(b.finding("hole-depth", "left")).toMatchObject({ verdict: "too close to call", value: 33.5 * inch });
  b.enter("reworked", { about: { check: "hole-depth", tag: "left" }, done: "dug deeper", minutes: 15 });
  b.read(post("hole-deep"), "36 0/16");
  expect(clearances()[0]).toEqual(["pour-concrete", "clear", []]);
  b.covered("pour-concrete");
  b.picture("mix-bag");
  b.picture("footing-seen");
  b.read("top-below-soil", "4 0/16");
  expect(clearances().map(([, state]) => state)).toEqual(["clear", "clear"]);
  b.answer("gate-swings", "it-is");
  expect(b.clearance("bury-footing").covered).toMatchObject({ noLaterThan: true });
  expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["lines-asked", undefined]);
  b.enter("declined", { objection: "wants the post a foot further" });
  expect(b.handingOver().missing.map((line) => line.about.item)).toEqual(["lines-asked"]);
  const reading = { id: "x", digest: "x", author: { person: "p", phone: "q" }, run: 99, made: 0 };
  const twice = { ...reading, kind: "reading-taken", what: { ...post("hole-deep"), typed: "3 ft 1/3", unit: "in" } };
  expect(admit(b.done().state, twice, "crew")).toMatchObject({ ok: false, refusal: { code: "reading-denominator" } });
});

/** Lines stand in the order of the sheet's steps, a step's own items before its checks. */
const order = (line: string): number =>
  ["hole-with-rule", "hole-deep", "stone-under", "post-plumb", "post-braced"].indexOf(line.split(" ")[0] ?? "");

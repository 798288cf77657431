import { describe, expect, test } from "vitest";
import {
  beforehandOf,
  clearances,
  type Finding,
  findings,
  handingOver,
  type JobState,
  jobState,
  leftToDoFor,
  momentOf,
  verdicts,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { kitCards, settings } from "#infra/demo/company.ts";
import { courtyard, lookedAt } from "#infra/demo/courtyard.ts";
import { enterAll } from "#infra/demo/enter.ts";
import { courtyardCoverings, courtyardExpected, type Expected, sideYardExpected } from "#infra/demo/expected.ts";
import { openBook, Phone, sha256Hex } from "#infra/demo/phone.ts";
import { type JobScript, moment } from "#infra/demo/script.ts";
import { sideYard } from "#infra/demo/side-yard.ts";
import { defaultSheet, defaultSheetJson } from "#infra/sheets/index.ts";

const sheet = defaultSheet();
const later = moment("20 12:00");

const played = new Map<JobScript, Promise<JobState>>();

function play(script: JobScript): Promise<JobState> {
  const before = played.get(script) ?? enter(script);
  played.set(script, before);
  return before;
}

/** The scenario without a network: one office desk and one phone, as the core reads them. */
async function enter(script: JobScript): Promise<JobState> {
  const digest = (content: Json): string => sha256Hex(new TextEncoder().encode(JSON.stringify(content)));
  const things = [
    ["sheet", sheet.id, defaultSheetJson] as const,
    ["settings", "settings", settings] as const,
    ...kitCards.map((card) => ["kit card", card.id, card as unknown as Json] as const),
  ];
  const book = openBook("job", Object.fromEntries(things.map(([, , content]) => [digest(content), content])));
  const office = new Phone("office");
  const opened = moment(script.opened);
  await office.enter(book, "job-opened", opened, { what: { title: script.title, zone: "America/Chicago", language: "en", units: "inch" } });
  for (const [thing, name, content] of things)
    await office.enter(book, "version-taken-over", opened, { what: { thing, name, number: 1, digest: digest(content) } });
  await office.enter(book, "design-set", opened, { what: { figures: script.figures as unknown as Json, switches: script.switches } });
  const shared = { book, sheet, script, photos: new Map(), labels: new Map(), fixes: false };
  await enterAll({ ...shared, phone: office }, script.office);
  await enterAll({ ...shared, phone: new Phone("crew") }, script.crew);
  await enterAll({ ...shared, phone: office }, script.afterwards);
  return jobState({ entries: book.entries, versions: book.versions });
}

const found = (all: readonly Finding[], { check, tag }: Expected): Finding | undefined =>
  all.find((f) => f.check === check && f.tag === tag);

describe.each([
  ["courtyard", courtyard, courtyardExpected],
  ["side yard", sideYard, sideYardExpected],
] as const)("the demo's %s", (_, script, expected) => {
  test.each(expected)("$check $tag: $verdict", async (wanted) => {
    const finding = found(findings(await play(script)), wanted);
    expect(finding?.verdict).toBe(wanted.verdict);
    if (wanted.value !== undefined) expect(Math.abs((finding?.value ?? Number.NaN) - wanted.value)).toBeLessThanOrEqual(1);
    // the table's u are rounded to a tenth of a micrometre
    if (wanted.doubt !== undefined) expect(Math.abs((finding?.doubt ?? Number.NaN) - wanted.doubt)).toBeLessThanOrEqual(2);
  });
});

describe("the demo's first job", () => {
  test("the table names every check that is asked", async () => {
    const asked = findings(await play(courtyard)).filter((f) => f.of === "check");
    expect(asked.map((f) => `${f.check} ${f.tag ?? ""}`).sort()).toEqual(
      courtyardExpected
        .filter(({ check }) => sheet.checks.some(({ id }) => id === check))
        .map(({ check, tag }) => `${check} ${tag ?? ""}`)
        .sort(),
    );
  });

  test("every verdict occurs, one concession, one rework", async () => {
    const all = findings(await play(courtyard));
    expect(new Set(all.map((f) => f.verdict))).toEqual(new Set(verdicts));
    expect(all.filter((f) => f.by?.way === "concession").map((f) => f.check)).toEqual(["patch-width"]);
    expect(found(all, { check: "level-across-round", verdict: "within", arithmetic: "" })?.beforeRework).toEqual([
      { value: 19_050, verdict: "outside" },
    ]);
  });

  test("each covering as it was shown and as it reads now", async () => {
    const state = await play(courtyard);
    const all = clearances(state, findings(state), later);
    expect(all.map(({ covering, covered, state: now }) => ({ covering, shown: covered?.shown, now }))).toEqual(courtyardCoverings);
    expect(all.find(({ covering }) => covering === "set-rock")?.covered?.shownLines?.length).toBe(1);
  });

  test("handing over names what is missing", async () => {
    const state = await play(courtyard);
    const over = handingOver(state, findings(state), later);
    expect(over.state).toBe("missing");
    expect(over.missing.map((line) => line.about.item ?? line.about.check)).toEqual(["point-tie-3"]);
    expect(over.leftToDo).toHaveLength(2);
  });
});

test("the second job stands half-way: one covering done on a clear, the next not yet", async () => {
  const state = await play(sideYard);
  const [first, second] = clearances(state, findings(state), later);
  expect([first?.state, first?.covered?.shown]).toEqual(["clear", "clear"]);
  expect([second?.state, second?.covered]).toEqual(["not yet", undefined]);
});

describe("what the demo's first job says besides", () => {
  test("everything was entered before digging, and the water ran for the first time at the picture of the falls", async () => {
    const state = await play(courtyard);
    expect(beforehandOf(state, findings(state), later)).toEqual([{ id: "before-digging", state: "everything entered", missing: [] }]);
    expect(momentOf(state, "first running")?.at).toBe(moment("13 13:50"));
  });

  test("leak tests and return visit are left to do by name, by a day, with somebody's name", async () => {
    const state = await play(courtyard);
    const left = findings(state).filter((finding) => leftToDoFor(state, finding) !== undefined);
    expect(new Set(left.map(({ step }) => step))).toEqual(new Set(["leak-tests", "return-visit"]));
    const entries = state.facts.filter(({ kind }) => kind === "left-to-do").map(({ entry }) => entry.who);
    expect(entries).toEqual([{ name: expect.any(String) }, { name: expect.any(String) }]);
  });

  test("every tag says what it is, and every tie from which mark, of which there is a picture", async () => {
    const state = await play(courtyard);
    expect(state.tags.filter(({ description }) => description === undefined)).toEqual([]);
    const ties = sheet.items.filter(({ fromMark }) => fromMark).flatMap(({ id }) => state.byItem.get(id) ?? []);
    expect(ties.length).toBe(7);
    expect(ties.filter(({ what }) => typeof what.mark !== "string")).toEqual([]);
    expect(found(findings(state), { check: "tie-marks", verdict: "within", arithmetic: "" })?.verdict).toBe("within");
  });

  test("a round tank of 52 in wins 13.8 to 18.4 gal with a low intake", async () => {
    // π / 4 x 52² x 1.5 / 231 = 13.790 gal, x 2 = 18.387; a gallon is 3785.411784 ml
    const wins = findings(await play(courtyard)).flatMap((finding) => finding.wins ?? []);
    expect(wins.map(({ lower, upper }) => [lower / 3785.411784, upper / 3785.411784])).toEqual([
      [expect.closeTo(13.79, 2), expect.closeTo(18.387, 2)],
    ]);
  });

  test("the set-up before rework is evidence and does not speak", async () => {
    const mark = found(findings(await play(courtyard)), { check: "mark-first", verdict: "within", arithmetic: "" });
    expect(mark?.says.figures.typed).toBe("27 9/16 in");
    expect([mark?.entries.length, mark?.aside?.length]).toEqual([2, 1]);
  });

  test("the concession agrees with what the office said of the picture", () => {
    const said = JSON.stringify(courtyard.afterwards);
    expect(lookedAt).toContainEqual({ item: "patch-rolled", says: "cannot tell" });
    expect(said).toContain("cannot be told");
    expect(said).not.toContain("no bubble");
    expect(JSON.stringify(courtyard.crew)).toMatch(/"paper-added".*Serial number on the carton/);
  });
});

import { describe, expect, test } from "vitest";
import {
  beforehandOf,
  clearances,
  designAt,
  designSwitches,
  expectationOf,
  type Finding,
  findings,
  handingOver,
  type JobState,
  jobState,
  leftToDoFor,
  momentOf,
  photoComparisons,
  sitePlaced,
  verdicts,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { kitCards, settings } from "#infra/demo/company.ts";
import { courtyard, lookedAt } from "#infra/demo/courtyard.ts";
import { enterAll } from "#infra/demo/enter.ts";
import { courtyardCoverings, courtyardExpected, type Expected, sideYardExpected } from "#infra/demo/expected.ts";
import { enterMeasured } from "#infra/demo/measured.ts";
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
async function enter(script: JobScript, cards = kitCards): Promise<JobState> {
  const digest = (content: Json): string => sha256Hex(new TextEncoder().encode(JSON.stringify(content)));
  const things = [
    ["sheet", sheet.id, defaultSheetJson] as const,
    ["settings", "settings", settings] as const,
    ...cards.filter(({ id }) => script.kitCards.includes(id)).map((card) => ["kit card", card.id, card as unknown as Json] as const),
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
  const crew = new Phone("crew");
  await enterAll({ ...shared, phone: crew }, script.crew);
  await enterMeasured({ ...shared, phone: crew, company: "demo", isDrawn: false }, script.measured ?? []);
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

/** The first job with another curve on its pump's card. */
const withCurve = (pumpCurve: string): Promise<JobState> =>
  enter(
    courtyard,
    kitCards.map((card) => (card.id === "tank-pump" ? { ...card, facts: { ...(card.facts as object), pumpCurve } } : card)),
  );
const flowOf = (state: JobState): number | undefined => {
  const { sheet: of } = state;
  if (of === undefined) throw new Error("no sheet");
  const design = designAt(state, Number.POSITIVE_INFINITY);
  return expectationOf("flow", { design, kitCards: state.kitCards }, designSwitches(of, design)).value;
};
const drawDown: Expected = { check: "draw-down", verdict: "within", arithmetic: "" };

describe("the pump's curve on its kit card", () => {
  test("gives the flow that the design expects: 45 gpm against 4 ft and 1.84 ft of friction", async () => {
    // 18 ft + 17.2 ft for the valve + 2 bends of 5.7 ft, bore 2.047 in, C 140: hf = 0.2083 / 100 x (100 / 140)^1.852 x 45^1.852 / 2.047^4.8655 x 46.6
    const litresPerMinute = 45 * 3.785411784;
    expect((flowOf(await play(courtyard)) ?? 0) / 1000).toBeCloseTo(litresPerMinute, 0);
  });

  test("changed, it changes the expected flow and the finding", async () => {
    const [own, weaker] = [await play(courtyard), await withCurve("0 gpm 9 ft; 10 gpm 6 ft; 20 gpm 0 ft")];
    expect(flowOf(weaker)).toBeLessThan((flowOf(own) ?? 0) / 2);
    const [before, after] = [own, weaker].map((state) => found(findings(state), drawDown));
    expect(after?.value).toBe(before?.value);
    expect(after?.upper).toBeLessThan((before?.upper ?? 0) - 10_000);
    expect([before?.verdict, after?.verdict]).toEqual(["within", "too close to call"]);
  });

  test("changed, it changes what the measured flow is compared with, and its finding", async () => {
    const flow: Expected = { check: "flow-measured", verdict: "within", arithmetic: "" };
    const [own, weaker, stronger] = [
      await play(courtyard),
      await withCurve("0 gpm 9 ft; 10 gpm 6 ft; 20 gpm 0 ft"),
      await withCurve("0 gpm 22 ft; 20 gpm 19 ft; 45 gpm 12 ft; 70 gpm 0 ft"),
    ];
    const [before, less, more] = [own, weaker, stronger].map((state) => found(findings(state), flow));
    expect([before?.says.key, less?.says.key, more?.says.key]).toEqual(["flow.as-expected", "flow.off-card", "flow.less"]);
    expect([before?.verdict, less?.verdict, more?.verdict]).toEqual(["within", "outside", "outside"]);
    expect([before?.aim, less?.aim, more?.aim]).toEqual([own, weaker, stronger].map(flowOf));
    expect(more?.value).toBe(before?.value);
    expect(more?.explains).toHaveLength(5);
  });

  test("a figure of the design taken away, the finding names it and the rest still computes", async () => {
    const state = await enter({ ...courtyard, figures: { ...courtyard.figures, streamDepth: "unknown" } });
    const waiting = findings(state).filter(({ unknown }) => unknown);
    // what the lid carries is not stated on its card either way
    expect(waiting.map(({ check, verdict, unknown }) => [check, verdict, unknown])).toEqual([
      ["draw-down", "not taken", ["streamDepth"]],
      ["stone-load", "not taken", ["lidLoad"]],
    ]);
  });
});

test("every value with a doubt has its largest contributors, three at most, the largest first", async () => {
  // a time is doubtful by the phones' clocks and nothing else
  const valued = [...findings(await play(courtyard)), ...findings(await play(sideYard))].filter(
    ({ doubt, kind }) => (doubt ?? 0) > 0 && kind !== "duration",
  );
  expect(valued.length).toBeGreaterThan(20);
  for (const { check, contributors = [] } of valued) {
    const u = contributors.map((one) => one.u);
    expect([check, u.length > 0 && u.length <= 3, [...u].sort((a, b) => b - a)]).toEqual([check, true, u]);
  }
});

test("the second job's glue session counts down by the table", async () => {
  const state = await play(sideYard);
  const cure = findings(state).find(({ check }) => check === "cure-passed");
  expect(cure?.from).toBe(moment("13 21:18"));
});

describe("where the first job's marks and buried points lie", () => {
  /** Chosen before anything was measured, inches; the tapes say the distances between them to the nearest quarter. */
  const chosen: Readonly<Record<string, readonly [number, number]>> = {
    A: [0, 0],
    B: [190.5, 0],
    C: [130.5, 170.5],
    "basin-tie ": [40.25, 90.25],
    "point-tie 1": [90.5, 90.25],
    "point-tie 2": [176.25, 90.5],
    "crossing-tie 1": [121.25, 90.25],
    "lid-tie ": [48.25, 96.25],
    "outlet-tie ": [-48.5, 3.75],
  };

  test("is found again from the tapes alone, all of it, within a quarter of an inch", async () => {
    const { plan, left, refusal } = sitePlaced(await play(courtyard), "all");
    expect([left, refusal]).toEqual([[], undefined]);
    const placed = [
      ...(plan?.marks ?? []).map(({ name, x, y }) => ({ name: name.slice(0, 1), x, y })),
      ...(plan?.points ?? []).flatMap((point) => (point.state === "placed" ? [point] : [])),
    ];
    expect(placed.map(({ name }) => name).sort()).toEqual(Object.keys(chosen).sort());
    for (const { name, x, y } of placed) {
      const [east = Number.NaN, north = Number.NaN] = chosen[name] ?? [];
      expect(Math.hypot(x / 25_400 - east, y / 25_400 - north), name).toBeLessThan(0.25);
    }
  });

  test("every tape is the distance between the chosen places to its nearest quarter of an inch", () => {
    const letters = { sill: "A", gate: "B", wall: "C" } as const;
    const markOf = (item: string): string => {
      const said = courtyard.marks?.[item] ?? "";
      return letters[said.includes("sill") ? "sill" : said.includes("gate") ? "gate" : "wall"];
    };
    const tapes = courtyard.crew.filter((line) => Array.isArray(line) && /-tie-\d$/.test(line[1]));
    expect(tapes.length).toBe(18);
    for (const line of tapes) {
      const [, item = "", typed = "", tag = ""] = line as readonly string[];
      const [, feet, inches, over, under] = /^(\d+) ft (\d+)(?: (\d)\/(\d))?$/.exec(typed) ?? [];
      const read = Number(feet) * 12 + Number(inches) + (under === undefined ? 0 : Number(over) / Number(under));
      const own = item.startsWith("mark") ? tag : `${item.replace(/-\d$/, "")} ${tag}`;
      const [from, to] = [chosen[markOf(item)], chosen[own]];
      if (from === undefined || to === undefined) throw new Error(`${item} ${tag}`);
      expect(read, `${item} ${tag}`).toBe(Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) * 4) / 4);
    }
  });

  test("stake, rim and mark stand alike in both set-ups: the laser was set up anew, the ground was not", () => {
    const read = (item: string): readonly number[] =>
      courtyard.crew.flatMap((line) => {
        if (!Array.isArray(line) || line[1] !== item) return [];
        const [, whole, over, under] = /^(\d+) (\d+)\/(\d+)$/.exec(line[2]) ?? [];
        return [Number(whole) + Number(over) / Number(under)];
      });
    const below = (item: string): readonly number[] => read(item).map((rod, i) => rod - (read("mark-first")[i] ?? Number.NaN));
    // 36 15/16 - 28 5/16 = 8 5/8; 36 3/16 - 27 9/16 = 8 5/8
    expect(below("stake-at-grade")).toEqual([8.625, 8.625]);
    // the tank went back on its bed as high as before: 13 5/8 at the fitting both times
    expect(below("rim-place-1")).toEqual([13.625, 13.625]);
  });
});

describe("what the demo's first job says besides", () => {
  test("three readings are confirmed by photos with the job's card in them", async () => {
    const compared = photoComparisons(await play(courtyard), "all");
    expect(compared.map(({ item, tag, says }) => [item, tag, says])).toEqual([
      ["mark-to-socket", "1", "agree"],
      ["cover-shallowest", undefined, "agree"],
      ["patch-beyond-cut", "A", "agree"],
    ]);
    // 2 1/16 in, 11 1/2 in and 13/16 in, each 25.4 mm
    const inches = [2.0625, 11.5, 0.8125];
    for (const [i, { tape, measured }] of compared.entries()) {
      expect(Math.abs((tape?.value ?? 0) - (inches[i] ?? 0) * 25_400)).toBeLessThanOrEqual(1);
      expect(Math.abs((measured?.value ?? 0) - (tape?.value ?? 0))).toBeLessThan(measured?.doubt ?? 0);
    }
  });

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
    expect(ties.length).toBe(18);
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

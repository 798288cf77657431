import { beforeAll, describe, expect, test } from "vitest";
import { findings, type JobState, jobState, movedToVersion, type ToleranceSheet, versionsTaken } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { sideYard } from "#infra/demo/side-yard.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { scriptedJob } from "../../helpers/scripted-job.ts";

const INCH = 25_400;
const NOW = Date.UTC(2026, 4, 13, 22);
let state: JobState;
beforeAll(async () => {
  state = await scriptedJob(sideYard);
});
const sheet = defaultSheet();
const offered = (change: Partial<ToleranceSheet>) => ({
  thing: "sheet" as const,
  name: sheet.id,
  number: 99,
  digest: "newer",
  content: { ...sheet, version: 2, ...change } as unknown as Json,
});
const named = ({
  before,
  after,
}: {
  readonly before?: { check: string; tag?: string };
  readonly after?: { check: string; tag?: string };
}): string => [(after ?? before)?.check, (after ?? before)?.tag].filter(Boolean).join(" ");

describe("what moving a job to another version would change", () => {
  test("the same sheet under another number: nothing", () => {
    const move = movedToVersion(state.ledger, offered({}), NOW);
    expect([move.findings, move.coverings, move.left]).toEqual([[], [], []]);
  });

  test("a limit that is drawn in: the findings that read it, and the covering that it holds", () => {
    // 5/32 in by the straight-edge: within 1/2 in, and with a limit of 5/32 in no longer to be told
    const checks = sheet.checks.map((check) =>
      check.id === "straight-edge-across" ? { ...check, aim: 0, upper: Math.round((5 * INCH) / 32) } : check,
    );
    const move = movedToVersion(state.ledger, offered({ checks }), NOW);
    expect(move.findings.map(named)).toEqual(["straight-edge-across"]);
    expect(move.findings[0]).toMatchObject({ before: { verdict: "within", upper: INCH / 2 }, after: { verdict: "too close to call" } });
    expect(move.coverings.map(({ before, after }) => [after?.covering, before?.state, after?.state])).toEqual([
      ["backfill-basin", "clear", "not yet"],
    ]);
    // it had been covered on a clear: now that is doubted, and what the phone showed stays as it was
    expect(move.coverings[0]?.after?.covered).toMatchObject({ shown: "clear", laterDoubted: true });
  });

  test("an item that comes is missed, one that goes leaves what was entered in the ledger", () => {
    const more = {
      id: "one-more",
      step: "wet-check",
      kind: "picture",
      title: { en: "One more" },
      weight: "holds",
      holds: "fill-trench",
    } as const;
    const items = [...sheet.items.filter(({ id }) => id !== "room-to-tamp" && id !== "bed-compacted"), more];
    const move = movedToVersion(state.ledger, offered({ items }), NOW);
    expect(move.findings.map((one) => [named(one), one.before?.verdict, one.after?.verdict])).toEqual([
      ["one-more", undefined, "not taken"],
      ["bed-compacted", "within", undefined],
      ["room-to-tamp", "not taken", undefined],
    ]);
    expect(move.left).toEqual([{ item: "bed-compacted" }]);
    expect(move.coverings.map(({ after }) => after?.covering)).toEqual(["fill-trench"]);
  });

  test("nothing is entered: the job reads as before", () => {
    const before = findings(state);
    movedToVersion(state.ledger, offered({ items: [], checks: [], oneOf: [] }), NOW);
    expect(findings(jobState(state.ledger))).toEqual(before);
  });
});

test("every version that a job took over stays told, the newest of each thing as the one it is judged by", () => {
  const { entries, versions } = state.ledger;
  const first = entries.find(({ what }) => (what as { thing?: string } | undefined)?.thing === "sheet");
  if (first === undefined) throw new Error("no sheet was taken over");
  const later = { ...first, id: "later", made: NOW, run: 10_000, what: { thing: "sheet", name: sheet.id, number: 99, digest: "newer" } };
  const moved = jobState({ entries: [...entries, later], versions: { ...versions, newer: { ...sheet, version: 2 } as unknown as Json } });
  const sheets = versionsTaken(moved).filter(({ thing }) => thing === "sheet");
  expect(sheets.map(({ number, current }) => [number, current])).toEqual([
    [1, false],
    [99, true],
  ]);
  expect(moved.sheet?.version).toBe(2);
  expect(
    versionsTaken(moved)
      .filter(({ thing }) => thing === "kit card")
      .every(({ current }) => current),
  ).toBe(true);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  aboutToBeBuried,
  admit,
  clearance,
  clearances,
  designFor,
  type Entry,
  factKinds,
  findings,
  handingOver,
  type JobLedger,
  jobState,
  lookBehind,
  phoneVisits,
  pictureFacts,
  picturesToLookAt,
  recordBeforeMove,
  reworkAsked,
  sheetFaults,
  standingOf,
  type Writer,
  withCorrections,
} from "#core/job/index.ts";
import { canonical, type Json } from "#core/ledger/index.ts";
import { defaultSheet, defaultSheetJson } from "#infra/sheets/default-sheet.ts";
import { later } from "../../helpers/job.ts";
import { twoDayLedger, twoDaySheetDigest } from "../../samples/two-day-job.ts";

const sheet = defaultSheet();
const whole = twoDayLedger(sheet, { order: "as listed" });
const ids = whole.entries.map(({ id }) => id);
const names = [sheet.items, sheet.checks, sheet.coverings, sheet.tagSets, sheet.instruments, sheet.placings].flatMap((list) =>
  list.map((thing) => thing.id),
);

/** Words that mean something somewhere, names that every object has, and anything else that JSON can say. */
const word = fc.oneof(
  fc.constantFrom(...names),
  fc.constantFrom(...ids),
  fc.constantFrom("A", "1", "crew", "office", "all", "clear", "in", "10 1/4", "2 h", "not yet", "unknown", twoDaySheetDigest),
  fc.constantFrom("constructor", "__proto__", "toString", "hasOwnProperty", "", "\ud800"),
);
const value: fc.Arbitrary<Json> = fc.oneof(
  { weight: 4, arbitrary: word },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Json> },
  { weight: 1, arbitrary: fc.constantFrom(0, -1, 1.5, 1e300, Number.MAX_SAFE_INTEGER, true, null, [], {}) },
  { weight: 1, arbitrary: fc.record({ item: word, check: word, tag: word, id: word, typed: word, unit: word }, { requiredKeys: [] }) },
  { weight: 1, arbitrary: fc.array(fc.record({ id: word, item: word, digest: word }, { requiredKeys: [] }), { maxLength: 3 }) },
);
const fields = [
  "item",
  "tag",
  "typed",
  "unit",
  "setUp",
  "placing",
  "instrument",
  "receiver",
  "distance",
  "at",
  "choice",
  "about",
  "covering",
  "exposed",
  "entry",
  "entries",
  "replace",
  "withdrawn",
  "role",
  "reason",
  "set",
  "hiddenBy",
  "figures",
  "switches",
  "thing",
  "name",
  "digest",
  "photo",
  "judged",
  "facts",
  "picture",
  "says",
  "shown",
  "lines",
  "lower",
  "upper",
  "confirms",
  "from",
  "text",
  "by",
  "__proto__",
];
const what = fc.dictionary(fc.constantFrom(...fields), value, { maxKeys: 8 }) as fc.Arbitrary<Json>;
/** Real words of a kind, with some of their fields turned into something else. */
const bent = fc.tuple(fc.constantFrom(...whole.entries), what).map(
  ([entry, other]): Pick<Entry, "kind" | "what"> => ({
    kind: entry.kind,
    what: { ...(entry.what as object), ...(other as object) } as Json,
  }),
);
const made = fc
  .tuple(fc.constantFrom(...factKinds, "a-kind-of-the-future"), what)
  .map(([kind, own]): Pick<Entry, "kind" | "what"> => ({ kind, what: own }));
const moved = fc.array(
  fc.record({ id: word, kind: fc.constantFrom(...factKinds), what: fc.oneof(what, value), run: fc.integer(), made: fc.integer() }),
  { maxLength: 3 },
);
const movedIn = moved.map(
  (list): Pick<Entry, "kind" | "what"> => ({
    kind: "moved-in",
    what: { from: "other", reason: "x", entries: list.map((m) => ({ ...m, author: { person: "p", phone: "phone-one" } })) } as Json,
  }),
);
const anything = fc.oneof({ weight: 3, arbitrary: bent }, { weight: 3, arbitrary: made }, { weight: 1, arbitrary: movedIn });

const asEntries = (list: readonly Pick<Entry, "kind" | "what">[]): readonly Entry[] =>
  list.map((one, i) => ({
    ...one,
    id: `odd-${i}`,
    digest: "",
    author: { person: "p", phone: i % 2 === 0 ? "phone-one" : "phone-two" },
    run: 500 + i,
    made: later + i,
    ...(i % 3 === 0 ? { sent: later, received: later + i } : {}),
  }));
const roles: readonly Writer[] = ["crew", "office", "company owner", "program"];

function everything(ledger: JobLedger): void {
  const state = jobState(ledger);
  const all = findings(state);
  for (const covering of [...sheet.coverings.map(({ id }) => id), "constructor"]) {
    clearance(state, all, covering, later);
    designFor(state, covering);
  }
  const now = clearances(state, all, later);
  const over = handingOver(state, all, later);
  for (const finding of all) standingOf(finding, 0);
  const lines = state.facts.flatMap((fact) => pictureFacts(state, fact));
  for (const figure of lines.flatMap(({ says }) => Object.values(says.figures)))
    expect(typeof figure === "string" || Number.isSafeInteger(figure)).toBe(true);
  for (const finding of all) lookBehind(state, finding);
  picturesToLookAt(state);
  aboutToBeBuried(state, all, now);
  for (const { facts } of phoneVisits(state))
    withCorrections(
      state,
      facts.map(({ id }) => id),
    );
  for (const { about } of reworkAsked(state)) expect(typeof about).toBe("object");
  recordBeforeMove(state);
  for (const entry of ledger.entries.slice(-12)) for (const writer of roles) admit(state, entry, writer);
  // what comes out is fit to be stored and hashed: no NaN, no undefined that matters
  const text = canonical(JSON.parse(JSON.stringify({ all, now, over })) as Json);
  const isNumberFault = !text.ok && text.refusal.code === "ledger-not-json";
  expect(isNumberFault).toBe(false);
  for (const { value: v, doubt, lower, upper } of all)
    for (const figure of [v, doubt, lower, upper]) if (figure !== undefined) expect(Number.isSafeInteger(figure)).toBe(true);
}

test("no ledger of entries in their shape makes the core throw, whatever they say", () => {
  fc.assert(
    fc.property(fc.array(anything, { minLength: 1, maxLength: 12 }), (odd) => {
      everything({ entries: [...whole.entries, ...asEntries(odd)], versions: whole.versions });
    }),
    { numRuns: 100 },
  );
});

test("nor a ledger of nothing else", () => {
  fc.assert(
    fc.property(fc.array(anything, { maxLength: 12 }), fc.dictionary(word, value), (odd, versions) => {
      everything({ entries: asEntries(odd), versions: { ...versions, [twoDaySheetDigest]: sheet as unknown as Json } });
    }),
    { numRuns: 100 },
  );
});

test("nor a sheet that is none: it is refused with its place", () => {
  const parts = Object.keys(defaultSheetJson as object);
  fc.assert(
    fc.property(fc.constantFrom(...parts), value, (part, odd) => {
      const faults = sheetFaults({ ...(defaultSheetJson as object), [part]: odd } as Json);
      for (const { place } of faults) expect(place.startsWith("sheet")).toBe(true);
    }),
    { numRuns: 100 },
  );
});

/** Any one leaf of the sheet turned into something else of a sheet's own words. */
test("nor a sheet with one thing in it changed, and a job on it", () => {
  const text = JSON.stringify(defaultSheetJson);
  fc.assert(
    fc.property(fc.constantFrom(...names), fc.constantFrom(...names), (from, to) => {
      const odd = JSON.parse(text.replaceAll(`"${from}"`, `"${to}"`)) as Json;
      sheetFaults(odd);
      everything({ entries: whole.entries, versions: { [twoDaySheetDigest]: odd } });
    }),
    { numRuns: 40 },
  );
});

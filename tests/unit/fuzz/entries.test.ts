import fc from "fast-check";
import { expect, it } from "vitest";
import {
  aboutToBeBuried,
  admit,
  callbacksOf,
  clearances,
  type Entry,
  type FactKind,
  factKinds,
  findings,
  type JobLedger,
  jobState,
  type Writer,
  writers,
} from "#core/job/index.ts";
import { canonical, type Json } from "#core/ledger/index.ts";
import { observe } from "#core/quality/index.ts";
import { csvLine, exportRows, exportTables, makeSayer, type Sayer } from "#core/record/index.ts";
import { warrantyClocks } from "#core/warranty/index.ts";
import { readWhat, whats } from "#core/wire/index.ts";
import { releasedPage } from "#templates/record/index.ts";
import { damagedValue } from "../../helpers/damage.ts";
import { tenItems } from "../../helpers/edge.ts";
import { type Pools, valuesOf } from "../../helpers/from-schema.ts";
import { fuzz, patience } from "../../helpers/fuzz.ts";
import { later, start } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const SHEET = "5".repeat(64);
const CARD = "6".repeat(64);
const versions: JobLedger["versions"] = {
  [SHEET]: tenItems,
  [CARD]: { id: "pump-a", part: "Pump", facts: { pumpCurve: "0 gpm 16 ft; 58 gpm 0 ft", cordLength: { typed: "20", unit: "ft" } } },
};
const ids = Array.from({ length: 16 }, (_, i) => `entry-${i}`);
const things = (tenItems as unknown as Record<string, readonly { readonly id: string }[]>) ?? {};
const idsOf = (list: string): readonly string[] => (things[list] ?? []).map(({ id }) => id);
const digests = [SHEET, CARD, "a".repeat(64)];
/** What stands for something in this job, by the name of the member that would say it; every one of them also where another belongs. */
const named: Readonly<Record<string, readonly unknown[]>> = {
  item: idsOf("items"),
  check: idsOf("checks"),
  step: idsOf("steps"),
  covering: idsOf("coverings"),
  hiddenBy: idsOf("coverings"),
  set: idsOf("tagSets"),
  tag: ["A", "B", "session 1"],
  instrument: idsOf("instruments"),
  placing: idsOf("placings"),
  choice: ["it-is", "it-is-not"],
  setUp: ids,
  reading: ids,
  id: ids,
  digest: digests,
  photo: ["b".repeat(64), "c".repeat(64)],
  typed: ["23 3/8", "10 in", "60 cm", "2 h", "-1/4", "2026-05-04T12:00Z", "1e999", "", "99999999 ft"],
  unit: ["in", "mm", "min", "ft", "", "x"],
  zone: ["America/New_York", "Nowhere/At_All", "UTC"],
  day: ["2026-06-10", "2027-02-28", "0000-01-01", "9999-12-31"],
  date: ["2026-06-10", "soon", "9999-12-31"],
  at: [start, 0, 8.64e15, 253_402_300_799_999],
};
const texts = [
  ...Object.values(named)
    .flat()
    .filter((one): one is string => typeof one === "string"),
  "w\u202ehat\u0000",
  "<script>x</script>",
  "=1+1",
];

const anyWhat: Pools = { texts, named };
const whatOf = (kind: FactKind, anything?: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  valuesOf(whats[kind], anything === undefined ? anyWhat : { ...anyWhat, anything });
/** Each kind's own shape; what it leaves open, such as an entry moved in or a word replaced, is another kind's or nothing known. */
const inner = fc.oneof(
  ...factKinds.map((kind) => whatOf(kind)),
  damagedValue([{ facts: { likeness: { hashes: ["0"] } } }, { name: "N" }], 2),
);
const senseless = factKinds.map((kind) => fc.record({ kind: fc.constant<string>(kind), what: whatOf(kind, inner) }));
const damaged = fc
  .tuple(fc.oneof(...senseless), fc.nat(2))
  .chain(([{ kind, what }, most]) => damagedValue([what], most + 1).map((spoilt) => ({ kind, what: spoilt })));
const unknownKind = fc.record({ kind: fc.constantFrom("newer-fact", "toString", "constructor"), what: inner });
const said = fc.oneof(
  { weight: 14, arbitrary: fc.oneof(...senseless) },
  { weight: 4, arbitrary: damaged },
  { weight: 1, arbitrary: unknownKind },
);
const aside = fc.option(fc.oneof(inner, fc.constant({ name: "Kim", role: "office", address: "Elm 4", customer: { name: "C" } })), {
  nil: undefined,
  freq: 2,
});

const entry = fc.record({
  said,
  who: aside,
  where: aside,
  phone: fc.nat(2),
  made: fc.oneof(fc.nat(10_000_000), fc.constantFrom(-start, 8.64e15 - start)),
  late: fc.nat(100_000),
});

/** What has no canonical form stands in no ledger: nobody can have sealed it. */
const partOf = (name: string, said: unknown): { readonly [part: string]: Json } =>
  said === undefined || !canonical(said as Json).ok ? {} : { [name]: said as Json };

function jobOf(given: readonly (typeof entry extends fc.Arbitrary<infer T> ? T : never)[]): JobLedger {
  const opening = [
    { kind: "job-opened", what: { title: "Elm Street 4", zone: "America/New_York", language: "en", units: "inch" } },
    { kind: "version-taken-over", what: { thing: "sheet", name: "gate-post", number: 1, digest: SHEET } },
    { kind: "tag-named", what: { set: "gate-post", tag: "A", hiddenBy: "pour-concrete" } },
  ].map((one) => ({ said: one as { kind: string; what: unknown }, who: undefined, where: undefined, phone: 0, made: 0, late: 0 }));
  const entries = [...opening, ...given].map(({ said: { kind, what }, who, where, phone, made, late }, i): Entry => {
    const at = start + made;
    return {
      id: ids[i] ?? `entry-${i}`,
      digest: "d".repeat(64),
      kind,
      author: { person: `person-${phone}`, phone: `phone-${phone}` },
      run: i,
      made: at,
      sent: at + late,
      received: start + late * 2,
      number: i + 1,
      ...partOf("what", what),
      ...partOf("who", who),
      ...partOf("where", where),
    };
  });
  return { entries, versions };
}

/** Everything that is made of a job wherever it is read: none of it may throw, whatever stands in the ledger. */
function made(ledger: JobLedger, withRecord: boolean): void {
  const state = jobState(ledger);
  const found = findings(state);
  const coverings = clearances(state, found, later);
  const sayers = (["en", "es"] as const).map((language) =>
    makeSayer({ language, units: "metric", zone: state.opened?.zone ?? "UTC", ...(state.sheet && { sheet: state.sheet }) }),
  );
  for (const sayer of sayers) for (const finding of found) expect(sayer.finding(finding)).not.toMatch(/undefined|NaN|\[object/);
  const parts = [found, coverings, aboutToBeBuried(state, found, coverings), warrantyClocks(state), callbacksOf(state)];
  for (const part of parts) expect(canonical(JSON.parse(JSON.stringify(part))).ok).toBe(true);
  observe("job-one", state, found, new Map());
  const exported = {
    job: "job-one",
    state,
    findings: found,
    clearances: coverings,
    sayer: sayers[0] as Sayer,
    people: {},
    language: "en",
  } as const;
  for (const table of exportTables) for (const row of exportRows(table, exported)) expect(csvLine(row)).toMatch(/\r\n$/);
  if (!withRecord) return;
  const model = recordOf(ledger, { edition: "customer", people: { "person-1": { name: "Kim Alder", role: "office" } } });
  const html = releasedPage(model, { pdf: "/x", photo: () => ({ missing: "none" }) });
  expect(html).not.toMatch(/<script/i);
}

it(
  "entries of the right shape without any sense, and of the wrong one: admitted or refused, and every finding is made all the same",
  async () => {
    let count = 0;
    const roles: readonly Writer[] = ["crew", "office", "company owner", "program"];
    await fuzz({
      kind: "jobs",
      inputs: fc.tuple(fc.array(entry, { minLength: 1, maxLength: 8 }), fc.constantFrom(...roles)),
      read([given, role]) {
        const ledger = jobOf(given);
        count += 1;
        made(ledger, count % 8 === 0);
        const last = ledger.entries.at(-1) as Entry;
        const shaped = readWhat(last.kind, last.what, "entries/0/what");
        if (!shaped.ok) return shaped.refusal;
        const allowed = Object.hasOwn(writers, last.kind) ? writers[last.kind as FactKind] : roles;
        const admitted = admit(
          jobState({ ...ledger, entries: ledger.entries.slice(0, -1) }),
          last,
          allowed.includes(role) ? role : (allowed[0] ?? role),
        );
        return admitted.ok ? "taken" : admitted.refusal;
      },
      least: { taken: 0.2, refused: 0.1 },
    });
  },
  patience(60),
);

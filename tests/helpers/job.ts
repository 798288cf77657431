import {
  type About,
  type Clearance,
  type Covering,
  clearances,
  type Entry,
  type Finding,
  findings,
  handingOver,
  type Item,
  type JobLedger,
  type JobState,
  jobState,
  type ToleranceSheet,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";

/** 1 June 2026, 12:00 UTC: the first minute of every job of these tests. */
export const start = Date.UTC(2026, 5, 1, 12);
export const minute = 60_000;
export const inch = 25_400;
/** A `now` at which no clock is left to wait for. */
export const later = start + 30 * 24 * 60 * minute;
export const sheetDigest = "b".repeat(64);

const words = (en: string) => ({ en });
const held = (id: string): Covering => ({ id, title: words(id), done: words(id), cautions: [] });

/** An item that does not hold names no covering. */
const item = ({ holds, ...rest }: Item): Item => (rest.weight === "holds" && holds !== undefined ? { ...rest, holds } : rest);

export const lengthItem = (id: string, more: Partial<Item> = {}): Item =>
  item({
    id,
    step: "step-one",
    kind: "reading",
    title: words(id),
    weight: "holds",
    holds: "bury-it",
    quantity: "length",
    unit: { inch: "in", metric: "mm" },
    instrument: "bench-tape",
    placing: "hard-place",
    ...more,
  });
export const pictureItem = (id: string, more: Partial<Item> = {}): Item =>
  item({
    id,
    step: "step-one",
    kind: "picture",
    title: words(id),
    weight: "holds",
    holds: "bury-it",
    ...more,
  });
export const answerItem = (id: string, more: Partial<Item> = {}): Item =>
  item({
    id,
    step: "step-one",
    kind: "answer",
    title: words(id),
    weight: "holds",
    holds: "bury-it",
    choices: [
      { id: "is-dry", title: words("dry"), accepts: true },
      { id: "is-wet", title: words("wet"), accepts: false },
    ],
    ...more,
  });

/** A sheet of our own, as small as a check of one rule allows: what a test does not add is not there to get in its way. */
export const bench = (parts: Partial<ToleranceSheet> = {}): ToleranceSheet => ({
  format: 1,
  id: "bench-sheet",
  version: 1,
  title: words("Bench"),
  switches: [],
  figures: [
    { id: "depthWanted", title: words("Depth wanted"), kind: "length", unit: "in", from: "design" },
    { id: "rimBelowGrade", title: words("Rim below grade"), kind: "length", unit: "in", from: "design" },
    { id: "cordLength", title: words("Cord"), kind: "length", unit: "ft", from: "kit card" },
    { id: "basinDepth", title: words("Depth"), kind: "length", unit: "in", from: "kit card" },
    { id: "basinLength", title: words("Length"), kind: "length", unit: "in", from: "kit card" },
    { id: "basinWidth", title: words("Width"), kind: "length", unit: "in", from: "kit card" },
    { id: "basinDiameter", title: words("Diameter"), kind: "length", unit: "in", from: "kit card" },
  ],
  instruments: [
    { id: "bench-tape", title: words("Tape"), resolution: 1588 },
    { id: "bench-laser", title: words("Laser"), resolution: 1588, line: "laser", receiver: "fine" },
    { id: "bench-level", title: words("Level and shims"), resolution: 794, exact: true, line: "spirit level" },
  ],
  placings: [
    { id: "hard-place", title: words("Hard edge"), halfWidth: 1588 },
    { id: "soft-place", title: words("Turf"), halfWidth: 12_700 },
    { id: "moving-water", title: words("Running water"), halfWidth: 6350 },
  ],
  tagSets: [],
  coverings: [held("bury-it"), held("close-it")],
  cautions: [],
  steps: [{ id: "step-one", number: 1, title: words("One"), cautions: [] }],
  items: [],
  oneOf: [],
  checks: [],
  ...parts,
});

export interface Entering {
  /** Default: `phone-one`. */
  readonly phone?: string;
  /** True time, ms; default a minute after the entry before. */
  readonly at?: number;
  readonly id?: string;
}

export interface Done {
  readonly state: JobState;
  readonly all: readonly Finding[];
  readonly clearances: readonly Clearance[];
}

export function computed(ledger: JobLedger, now = later): Done {
  const state = jobState(ledger);
  const all = findings(state);
  return { state, all, clearances: clearances(state, all, now) };
}

export type What = { readonly [key: string]: Json };

/** A job as its phones write it, all clocks right, every entry sent as soon as made. */
export function book(sheet: ToleranceSheet, versions: Readonly<Record<string, Json>> = {}) {
  const entries: Entry[] = [];
  const runs = new Map<string, number>();
  let clock = start;
  const enter = (kind: string, what: What | undefined, { phone = "phone-one", at, id }: Entering = {}): string => {
    clock = at ?? clock + minute;
    const run = (runs.get(phone) ?? 0) + 1;
    runs.set(phone, run);
    const own = id ?? `${kind}-${entries.length + 1}`;
    entries.push({
      id: own,
      digest: own,
      kind,
      author: { person: `person of ${phone}`, phone },
      run,
      made: clock,
      sent: clock,
      received: clock,
      number: entries.length + 1,
      ...(what === undefined ? {} : { what }),
    });
    return own;
  };
  const opened = { title: "Bench job", zone: "America/New_York", language: "en", units: "inch" };
  enter("job-opened", opened);
  enter("version-taken-over", { thing: "sheet", name: sheet.id, number: 1, digest: sheetDigest });
  const ledger = (): JobLedger => ({ entries: [...entries], versions: { [sheetDigest]: sheet as unknown as Json, ...versions } });
  const tagged = (about: string | About): What => (typeof about === "string" ? { item: about } : (about as What));
  return {
    enter,
    ledger,
    clock: () => clock,
    read: (about: string | About, typed: string, more: What = {}, how: Entering = {}) =>
      enter("reading-taken", { ...tagged(about), typed, unit: "in", ...more }, how),
    picture: (about: string | About, more: What = {}, how: Entering = {}) =>
      enter(
        "picture-taken",
        { ...tagged(about), photo: "0".repeat(63) + entries.length.toString(16).at(-1), bytes: 1, type: "image/jpeg", ...more },
        how,
      ),
    answer: (about: string | About, choice: string, how: Entering = {}) => enter("answered", { ...tagged(about), choice }, how),
    tag: (set: string, tag: string, hiddenBy: string) => enter("tag-named", { set, tag, hiddenBy }),
    setUp: (receiver: "fine" | "coarse" = "fine", more: What = {}) =>
      enter("set-up-made", { instrument: "bench-laser", receiver, ...more }),
    covered: (covering: string, shown: "clear" | "on word" | "not yet" = "clear", more: What = {}, how: Entering = {}) =>
      enter("covered", { covering, shown, lines: [], sheet: sheetDigest, rules: 1, restedOn: [], ...more }, how),
    done: (now?: number): Done => computed(ledger(), now),
    clearance: (covering: string, now?: number): Clearance => {
      const found = computed(ledger(), now).clearances.find((c) => c.covering === covering);
      if (found === undefined) throw new Error(`no covering ${covering}`);
      return found;
    },
    finding: (check: string, tag?: string): Finding => {
      const found = computed(ledger()).all.find((f) => f.check === check && f.tag === tag);
      if (found === undefined) throw new Error(`no finding ${check} ${tag ?? ""}`);
      return found;
    },
    handingOver: () => {
      const { state, all } = computed(ledger());
      return handingOver(state, all, later);
    },
  };
}
export type Book = ReturnType<typeof book>;

/** What the lines of a clearance ask for. */
export const asks = (clearance: Clearance): readonly string[] =>
  clearance.lines.map(({ about }) => [about.check ?? about.item ?? "", ...(about.tag === undefined ? [] : [about.tag])].join(" "));

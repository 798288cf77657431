import {
  type Check,
  designSwitches,
  type Entry,
  expectationOf,
  type FactKind,
  type Item,
  type JobLedger,
  type LimitFigure,
  type ToleranceSheet,
  type Typed,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";

export interface ScriptedEntry {
  readonly id: string;
  readonly kind: FactKind;
  readonly what: { readonly [key: string]: Json };
  /** The phone's clock, ms. */
  readonly made: number;
}

export interface TwoDayOptions {
  readonly order: "as listed" | "spillway before trench" | "day one at night";
  /** One item that nobody enters; with a tag, for that tag alone. */
  readonly leaveOut?: { readonly item: string; readonly tag?: string };
  readonly sheetDigest?: string;
  /** Switches that the design sets. */
  readonly switches?: Readonly<Record<string, boolean>>;
}

export const twoDaySheetDigest = "5".repeat(64);

const MINUTE = 60_000;
const INCH = 25_400;
/** 2 June 2026, 7:00 in a zone four hours behind UTC. */
const dayOne = Date.UTC(2026, 5, 2, 11);
const night = dayOne + 14 * 60 * MINUTE;
const dayTwo = dayOne + 24 * 60 * MINUTE;

/** Figures of this job; own. */
const figures: Readonly<Record<string, Typed>> = {
  rimBelowGrade: { typed: "4", unit: "in" },
  cordLength: { typed: "30", unit: "ft" },
  basinDepth: { typed: "24", unit: "in" },
  basinLength: { typed: "60", unit: "in" },
  basinWidth: { typed: "48", unit: "in" },
  basinDiameter: { typed: "54", unit: "in" },
  basinWeight: { typed: "75", unit: "lb" },
  rainExpected: { typed: "1", unit: "in" },
  pipeSize: { typed: "2", unit: "in" },
  pipeRun: { typed: "15", unit: "ft" },
  streamLength: { typed: "8", unit: "ft" },
  streamWidth: { typed: "20", unit: "in" },
  streamDepth: { typed: "1", unit: "in" },
};
const namedLengths: Readonly<Record<string, number>> = { "rim below finished grade": 4 * INCH };

/** Lengths that limits are derived from, under the switches of the design. */
function lengthsOfDesign(sheet: ToleranceSheet, switches: Readonly<Record<string, boolean>>): Readonly<Record<string, number>> {
  const design = { figures, switches };
  const drawDown = expectationOf("drawDown", { design, kitCards: [] }, designSwitches(sheet, design)).value;
  return { ...namedLengths, ...(drawDown === undefined ? {} : { "expected draw-down": drawDown }) };
}

const tagNames: Readonly<Record<string, readonly string[]>> = {
  "side-fitting": ["A"],
  "glue-session": ["1", "2"],
  "buried-point": ["1", "2"],
  "fall-spillway": ["A"],
  "edge-stretch": ["A", "B"],
  "tie-mark": ["A", "B", "C"],
};
const namesOf = (set: { readonly id: string; readonly least: number }): readonly string[] =>
  tagNames[set.id] ?? ["A", "B", "C"].slice(0, set.least);

/** Three marks 240 in apart, and everything that is tied to them in the middle: 240 in / √3 = 138.56 in from each. */
const tieMarks = ["A", "B", "C"] as const;
const tieNumber = ({ id }: Item): number => Number(/\d+$/.exec(id)?.[0] ?? 1);
const tieTyped = { toMark: "240 0/16 in", toPoint: "138 9/16 in" } as const;

type LengthOf = (limit: LimitFigure | undefined) => number;

const lengthBy =
  (named: Readonly<Record<string, number>>): LengthOf =>
  (limit) =>
    limit === undefined ? 0 : typeof limit === "number" ? limit : (named[limit.function] ?? 0) + (limit.offset ?? 0);

/** Rod readings that make a rim out of level by its aims, and flat: offsets below the highest place, micrometres. */
function rimOffsets(along: number, across: number, places: Check["places"]): readonly number[] {
  return places === "quarter points" ? [0, (along - across) / 2, along, (along + across) / 2] : [0, along, along + across, across];
}

/** Lengths that bring every check exactly to its aim, by item. */
function lengthsAtAim(
  sheet: ToleranceSheet,
  isAsked: (thing: Pick<Item, "switches">) => boolean,
  length: LengthOf,
): ReadonlyMap<string, number> {
  const lengths = new Map<string, number>();
  const checks = sheet.checks.filter((check) => check.kind === "length" && isAsked(check));
  const base = 40 * INCH;
  const tilt = (way: Check["way"]) => checks.find((check) => check.function === "out of level" && check.way === way);
  const rim = tilt("along");
  rim?.items.forEach((id, i) => {
    lengths.set(id, base + (rimOffsets(length(rim.aim), length(tilt("across")?.aim), rim.places)[i] ?? 0));
  });
  for (const check of checks) {
    const before = check.minus ?? [];
    if (check.function === "single value" && before.length === 0 && check.aim !== undefined)
      for (const id of check.items) lengths.set(id, length(check.aim));
    if (check.function === "single value" && before.length > 0) {
      for (const id of check.items) if (!lengths.has(id)) lengths.set(id, base);
      const mean = check.items.reduce((sum, id) => sum + (lengths.get(id) ?? base), 0) / check.items.length;
      for (const id of before) lengths.set(id, Math.round(mean - length(check.aim)));
    }
    // the witness mark stands 2 in beyond the socket's depth
    if (check.function === "short of the socket") for (const id of check.items) lengths.set(id, 2 * INCH + length(check.aim));
    if (check.function === "level along a lip") for (const id of check.items) lengths.set(id, length(check.aim));
  }
  for (const check of checks.filter((c) => c.function === "moved since"))
    check.items.forEach((id, i) => {
      lengths.set(id, (lengths.get(check.minus?.[i] ?? "") ?? base) + length(check.aim));
    });
  return lengths;
}

/** A length to the tape's 1/32 marks, as a careful hand writes it: the marks stay even where they could be cancelled. */
function tapeText(micrometres: number): string {
  const marks = Math.round(Math.abs(micrometres) / (INCH / 32));
  return `${micrometres < 0 ? "-" : ""}${Math.floor(marks / 32)} ${marks % 32}/32 in`;
}

const plainText: Readonly<Record<string, string>> = { duration: "2 h", temperature: "64 °F", power: "300 W" };

/** Steps in the order in which this job goes through them. */
function stepOrder(sheet: ToleranceSheet, order: TwoDayOptions["order"]): readonly string[] {
  const listed = sheet.steps.map((step) => step.id);
  if (order !== "spillway before trench") return listed;
  const [, second, third] = sheet.coverings;
  const holding = (covering: string | undefined, byTag: boolean) =>
    listed.filter((step) => sheet.items.some((i) => i.step === step && (i.holds === covering || (byTag && i.holds === "by tag"))));
  const later = holding(second?.id, true);
  const sooner = holding(third?.id, false).filter((step) => !later.includes(step));
  const first = listed.findIndex((step) => later.includes(step) || sooner.includes(step));
  const rest = listed.slice(first).filter((step) => !later.includes(step) && !sooner.includes(step));
  return [...listed.slice(0, first), ...sooner, ...later, ...rest];
}

/** A job of two days in which everything that holds or is asked is entered at its aim, so that every covering clears. Pure. */
export function twoDayJob(sheet: ToleranceSheet, options: TwoDayOptions): readonly ScriptedEntry[] {
  const entries: ScriptedEntry[] = [];
  const switchedOn = new Map(sheet.switches.map((s) => [s.id, options.switches?.[s.id] ?? s.standard]));
  const isAsked = ({ switches }: Pick<Item, "switches">): boolean =>
    (switches?.on ?? []).every((s) => switchedOn.get(s)) && !(switches?.off ?? []).some((s) => switchedOn.get(s));
  const lengths = lengthsAtAim(sheet, isAsked, lengthBy(lengthsOfDesign(sheet, options.switches ?? {})));
  const otherWays = new Set(sheet.oneOf.flatMap((one) => one.groups.slice(1).flatMap((group) => group.items)));
  // each mark is tied to those before it
  const isToLaterMark = (item: Item, tag: string | undefined): boolean =>
    item.tags === "tie-mark" && tieNumber(item) > tieMarks.findIndex((mark) => mark === tag);
  const untils = new Set(sheet.checks.flatMap((check) => check.until ?? []));
  const timed = new Set(sheet.checks.filter((check) => check.apart !== undefined).flatMap((check) => check.items));
  const order = stepOrder(sheet, options.order);
  const tags = sheet.tagSets.flatMap((set) =>
    namesOf(set).map((tag, i) => ({ set: set.id, tag, hiddenBy: set.coverings[i % set.coverings.length] ?? "" })),
  );

  let worked = dayOne;
  let typedAt = dayOne;
  let late = false;
  const enter = (kind: FactKind, what: { readonly [key: string]: Json }, minutes = 1): string => {
    worked += minutes * MINUTE;
    typedAt = late ? Math.max(typedAt, night) + MINUTE : worked;
    const id = `entry-${String(entries.length + 1).padStart(3, "0")}`;
    entries.push({ id, kind, what, made: typedAt });
    return id;
  };

  enter("job-opened", { title: "Two-day job", zone: "America/New_York", language: "en", units: "inch" });
  const digest = options.sheetDigest ?? twoDaySheetDigest;
  enter("version-taken-over", { thing: "sheet", name: sheet.id, number: 1, digest });
  enter("design-set", {
    figures: figures as unknown as Json,
    ...(options.switches ? { switches: options.switches } : {}),
  });
  // the office opened it in time; what the crew saw on day one is typed at night
  late = options.order === "day one at night";
  for (const tag of tags) enter("tag-named", tag);

  const wanted = sheet.items.filter(
    (item) =>
      (item.weight === "holds" || item.weight === "asked" || item.tags === "tie-mark") &&
      isAsked(item) &&
      !otherWays.has(item.id) &&
      (item.whenNoTagOf === undefined || !tags.some((t) => t.set === item.whenNoTagOf)),
  );
  const instances = wanted.flatMap((item) =>
    item.tags === undefined ? [{ item }] : tags.filter((t) => t.set === item.tags).map((tag) => ({ item, tag })),
  ).filter(({ item, tag }: { readonly item: Item; readonly tag?: (typeof tags)[number] }) => !isToLaterMark(item, tag?.tag));
  type Instance = (typeof instances)[number] & { readonly tag?: (typeof tags)[number] };
  const coveringOf = ({ item, tag }: Instance): string | undefined =>
    sheet.oneOf.find((one) => one.groups.some((group) => group.items.includes(item.id)))?.holds ??
    (item.weight !== "holds" ? undefined : item.holds === "by tag" ? tag?.hiddenBy : item.holds);
  const isLeftOut = ({ item, tag }: Instance): boolean =>
    options.leaveOut?.item === item.id && (options.leaveOut.tag === undefined || options.leaveOut.tag === tag?.tag);

  const dates = sheet.checks.filter((check) => check.function === "between two instants");
  const typedFor = (item: Item): string => {
    if (dates.some(({ items }) => items[0] === item.id)) return new Date(dayOne - 24 * 60 * MINUTE).toISOString();
    if (dates.some(({ items }) => items[1] === item.id)) return new Date(dayTwo + 7 * 24 * 60 * MINUTE).toISOString();
    if (item.quantity === "instant") return new Date(worked).toISOString();
    if (item.quantity !== undefined && item.quantity !== "length") return plainText[item.quantity] ?? "1";
    const at = lengths.get(item.id);
    if (item.fromMark) return item.tags === "tie-mark" ? tieTyped.toMark : tieTyped.toPoint;
    return tapeText(at ?? 12 * INCH);
  };
  const one = ({ item, tag }: Instance, setUp: string | undefined): void => {
    const about = { item: item.id, ...(tag ? { tag: tag.tag } : {}) };
    const choice = item.choices?.find((c) => c.accepts)?.id ?? "";
    if (item.kind === "answer") enter("answered", { ...about, choice });
    else if (item.kind === "picture")
      enter("picture-taken", { ...about, photo: (entries.length + 1).toString(16).padStart(64, "0"), bytes: 1, type: "image/jpeg" });
    else {
      const tie = item.fromMark ? { mark: tieMarks[tieNumber(item) - 1] ?? "", side: "left" } : {};
      const minutes = timed.has(item.id) ? 10 : 1;
      const what = { ...about, typed: typedFor(item), unit: item.unit?.inch ?? "in", ...(setUp === undefined ? {} : { setUp }), ...tie };
      enter("reading-taken", { ...what, ...(late ? { at: worked + minutes * MINUTE } : {}) }, minutes);
    }
  };

  const waiting = new Map<string, Set<Instance>>(
    sheet.coverings.map(({ id }) => [id, new Set(instances.filter((i) => coveringOf(i) === id))]),
  );
  const cover = (): void => {
    for (const [covering, left] of waiting) {
      if (left.size > 0) continue;
      waiting.delete(covering);
      const short = instances.filter((i) => coveringOf(i) === covering && isLeftOut(i));
      const shown = short.length === 0 ? "clear" : "not yet";
      const lines = short.map(({ item }) => item.id);
      enter("covered", { covering, shown, lines, sheet: digest, rules: 1, restedOn: [], at: worked + MINUTE });
    }
  };

  for (const step of order) {
    if (sheet.items.some((item) => item.step === step && untils.has(item.id)) && worked < dayTwo) {
      late = false;
      worked = dayTwo;
    }
    let setUp: string | undefined;
    for (const instance of instances.filter(({ item }) => item.step === step)) {
      if (!isLeftOut(instance)) {
        if (instance.item.inSetUp) setUp ??= enter("set-up-made", { instrument: instance.item.instrument ?? "", receiver: "fine" });
        one(instance, instance.item.inSetUp ? setUp : undefined);
      }
      const covering = coveringOf(instance);
      if (covering !== undefined) waiting.get(covering)?.delete(instance);
    }
    cover();
  }
  for (const step of sheet.steps.filter(({ id }) => sheet.items.some((item) => item.step === id && item.weight === "open")))
    enter("left-to-do", { text: step.title.en, by: "2026-06-20", about: { step: step.id } });
  enter("signed", { relation: "customer", language: "en" });
  return entries;
}

/** The same job as the core reads it: one phone, all sent the evening after. */
export function twoDayLedger(sheet: ToleranceSheet, options: TwoDayOptions): JobLedger {
  const scripted = twoDayJob(sheet, options);
  const sent = dayTwo + 14 * 60 * MINUTE;
  const entries: Entry[] = scripted.map(({ id, kind, what, made }, run) => ({
    id,
    digest: id,
    kind,
    author: { person: "person-one", phone: "phone-one" },
    run,
    made,
    sent,
    received: sent,
    number: run + 1,
    what,
  }));
  return { entries, versions: { [options.sheetDigest ?? twoDaySheetDigest]: sheet as unknown as Json } };
}

/** After the second day's work; a `now` at which no clock is left to wait for. */
export const afterTwoDays = dayTwo + 15 * 60 * MINUTE;

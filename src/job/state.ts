import type { Json } from "../ledger/index.ts";
import type { About, Entry, Whats } from "./fact.ts";
import type { Design, KitCard } from "./figures.ts";
import { type Live, liveFacts, whatOf } from "./live.ts";
import { oncePer } from "./once-per.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { readSheet } from "./sheet-reading.ts";

/** What a job's findings are computed from: its entries, and the content of the company's things that it took over. */
export interface JobLedger {
  readonly entries: readonly Entry[];
  /** Content by digest. */
  readonly versions: Readonly<Record<string, Json>>;
}

export interface Tag {
  readonly set: string;
  readonly tag: string;
  readonly hiddenBy: string;
  /** What it is, in words. */
  readonly description?: string;
  readonly entry: string;
}

export interface SetUp {
  readonly id: string;
  readonly position: number;
  readonly instrument: string;
  readonly receiver?: "fine" | "coarse";
  readonly distance?: { readonly typed: string; readonly unit: string };
}

/** A moment from which older evidence about something no longer counts. */
export interface Cut {
  readonly about: About;
  /** Everything that this covering hides was exposed. */
  readonly covering?: string;
  readonly position: number;
  readonly why: "reworked" | "opened up again";
  readonly entry: string;
}

/** A job as its facts make it. Everything else is derived from this and nothing else. */
export interface JobState {
  readonly ledger: JobLedger;
  readonly facts: readonly Live[];
  /** The facts that count, by kind. */
  readonly byKind: ReadonlyMap<string, readonly Live[]>;
  /** The facts that count and name an item, by item. */
  readonly byItem: ReadonlyMap<string, readonly Live[]>;
  readonly opened?: Whats["job-opened"];
  readonly sheet?: ToleranceSheet;
  readonly sheetDigest?: string;
  readonly kitCards: readonly KitCard[];
  readonly settings?: Json;
  readonly tags: readonly Tag[];
  readonly setUps: ReadonlyMap<string, SetUp>;
  readonly cuts: readonly Cut[];
}

const counting = (facts: readonly Live[], kind: string): readonly Live[] => facts.filter((f) => f.kind === kind && f.standing === "counts");

/** The facts of one kind that count, in the order of the work. */
export function factsOf<K extends keyof Whats>(state: JobState, kind: K): readonly (Live & { readonly what: Whats[K] })[] {
  return (state.byKind.get(kind) ?? []) as unknown as readonly (Live & { readonly what: Whats[K] })[];
}

/** A moment of the work: a place in its order, and a time where it was entered later than it happened. */
export interface Moment {
  readonly position: number;
  /** Milliseconds. */
  readonly at: number;
}

export const isBefore = (fact: Live, moment: Moment): boolean => fact.position < moment.position && fact.at <= moment.at;

/** The design as it stood at a place in the order of the work: later changes lie over earlier ones, figure by figure. */
export function designAt(state: JobState, position: number, at = Number.POSITIVE_INFINITY): Design {
  return designOf(
    state,
    factsOf(state, "design-set")
      .filter((fact) => isBefore(fact, { position: position + 1, at }))
      .map(({ id }) => id)
      .join(" "),
  );
}

/** The design that these entries make: one object however many coverings are judged by it, so that it is worked out once. */
const designOf = oncePer((state: JobState, ids: string): Design => {
  const named = new Set(ids.split(" "));
  const set = factsOf(state, "design-set").filter(({ id }) => named.has(id));
  return {
    figures: Object.fromEntries(set.flatMap(({ what }) => Object.entries(what.figures ?? {}))),
    switches: Object.fromEntries(set.flatMap(({ what }) => Object.entries(what.switches ?? {}))),
  };
});

interface Indexed {
  readonly facts: readonly Live[];
  readonly byKind: ReadonlyMap<string, readonly Live[]>;
  readonly byItem: ReadonlyMap<string, readonly Live[]>;
}

/** The facts, and those that count by their kind and by the item that they name. */
function indexed(facts: readonly Live[]): Indexed {
  const byKind = new Map<string, Live[]>();
  const byItem = new Map<string, Live[]>();
  const add = (to: Map<string, Live[]>, key: string, fact: Live): void => {
    const known = to.get(key);
    if (known) known.push(fact);
    else to.set(key, [fact]);
  };
  for (const fact of facts) {
    if (fact.standing !== "counts") continue;
    add(byKind, fact.kind, fact);
    if (typeof fact.what.item === "string") add(byItem, fact.what.item, fact);
  }
  return { facts, byKind, byItem };
}

function cutsOf(facts: readonly Live[]): readonly Cut[] {
  const cuts: Cut[] = [];
  for (const fact of facts) {
    if (fact.standing !== "counts") continue;
    if (fact.kind === "reworked")
      cuts.push({ about: whatOf(fact, "reworked").about, position: fact.position, why: "reworked", entry: fact.id });
    if (fact.kind === "opened-up-again") {
      const { covering, exposed } = whatOf(fact, "opened-up-again");
      const cut = { position: fact.position, why: "opened up again", entry: fact.id } as const;
      if (exposed === "all") cuts.push({ ...cut, about: {}, covering });
      else for (const about of exposed) cuts.push({ ...cut, about });
    }
  }
  return cuts;
}

interface TakenOver {
  readonly sheet?: ToleranceSheet;
  readonly sheetDigest?: string;
  readonly kitCards: readonly KitCard[];
  readonly settings?: Json;
}

function isKitCard(content: Json | undefined): boolean {
  if (typeof content !== "object" || content === null || !("facts" in content)) return false;
  return typeof content.facts === "object" && content.facts !== null;
}

/** The newest version of each thing of the company. A sheet that is not attached, or does not read, is no sheet. */
function takenOver(facts: readonly Live[], versions: JobLedger["versions"]): TakenOver {
  const newest = new Map(
    counting(facts, "version-taken-over").map((fact) => {
      const { thing, name, digest } = whatOf(fact, "version-taken-over");
      return [thing === "kit card" ? `${thing} ${name}` : thing, digest] as const;
    }),
  );
  const contentOf = (digest: string | undefined): Json | undefined =>
    digest !== undefined && Object.hasOwn(versions, digest) ? versions[digest] : undefined;
  const sheetDigest = newest.get("sheet");
  const sheetJson = contentOf(sheetDigest);
  const sheet = sheetJson === undefined ? undefined : readSheet(sheetJson);
  const settings = contentOf(newest.get("settings"));
  const cards = [...newest].filter(([thing]) => thing.startsWith("kit card ")).map(([, digest]) => contentOf(digest));
  return {
    ...(sheet?.ok && sheetDigest !== undefined ? { sheet: sheet.value, sheetDigest } : {}),
    kitCards: cards.filter(isKitCard) as unknown as readonly KitCard[],
    ...(settings === undefined ? {} : { settings }),
  };
}

/** Tags as last named. One that no covering of its set hides stands under the first of them: no tag escapes every covering. */
function tagsOf(facts: readonly Live[], sheet: ToleranceSheet | undefined): readonly Tag[] {
  const tags = new Map<string, Tag>();
  for (const fact of counting(facts, "tag-named")) {
    const { set, tag, hiddenBy, description } = whatOf(fact, "tag-named");
    const coverings = sheet?.tagSets.find((s) => s.id === set)?.coverings ?? [hiddenBy];
    const hides = coverings.includes(hiddenBy) ? hiddenBy : (coverings[0] ?? hiddenBy);
    tags.set(`${set} ${tag}`, { set, tag, hiddenBy: hides, ...(description === undefined ? {} : { description }), entry: fact.id });
  }
  return [...tags.values()];
}

/** What the office changed of the particulars since the job was opened, the newest over the older ones. */
const changedSince = (facts: readonly Live[]): Partial<Whats["job-opened"]> =>
  Object.assign(
    {},
    ...counting(facts, "particulars-set").map((fact) => {
      const { reason: _, ...changed } = whatOf(fact, "particulars-set");
      return changed;
    }),
  ) as Partial<Whats["job-opened"]>;

/** State from a ledger. Total: an unknown kind, an unknown version or a withheld body takes nothing else with it. */
export function jobState(ledger: JobLedger): JobState {
  const facts = liveFacts(ledger.entries);
  const opened = counting(facts, "job-opened")[0];
  const taken = takenOver(facts, ledger.versions);
  const setUps = counting(facts, "set-up-made").map(
    (fact) => [fact.id, { ...whatOf(fact, "set-up-made"), id: fact.id, position: fact.position }] as const,
  );
  return {
    ledger,
    ...indexed(facts),
    ...(opened ? { opened: { ...whatOf(opened, "job-opened"), ...changedSince(facts) } } : {}),
    ...taken,
    tags: tagsOf(facts, taken.sheet),
    setUps: new Map(setUps),
    cuts: cutsOf(facts),
  };
}

/** The state as it stood before a place in the order of the work: for what counted before rework. */
export const stateBefore = oncePer((state: JobState, position: number): JobState => {
  const facts = state.facts.filter((fact) => fact.position < position);
  return { ...state, ...indexed(facts), cuts: state.cuts.filter((cut) => cut.position < position) };
});

import type { Json } from "../ledger/index.ts";
import type { About, Entry, Whats } from "./fact.ts";
import type { Design, KitCard } from "./figures.ts";
import { type Live, liveFacts, whatOf } from "./live.ts";
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
  return counting(state.facts, kind) as unknown as readonly (Live & { readonly what: Whats[K] })[];
}

/** The design as it stood at a place in the order of the work: later changes lie over earlier ones, figure by figure. */
export function designAt(state: JobState, position: number): Design {
  const figures: Record<string, Design["figures"][string]> = {};
  const switches: Record<string, boolean> = {};
  for (const fact of factsOf(state, "design-set")) {
    if (fact.position > position) break;
    Object.assign(figures, fact.what.figures);
    Object.assign(switches, fact.what.switches);
  }
  return { figures, switches };
}

function indexByItem(facts: readonly Live[]): ReadonlyMap<string, readonly Live[]> {
  const byItem = new Map<string, Live[]>();
  for (const fact of facts) {
    const item = fact.what.item;
    if (fact.standing !== "counts" || typeof item !== "string") continue;
    const known = byItem.get(item);
    if (known) known.push(fact);
    else byItem.set(item, [fact]);
  }
  return byItem;
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

/** State from a ledger. Total: an unknown kind, an unknown version or a withheld body takes nothing else with it. */
export function jobState(ledger: JobLedger): JobState {
  const facts = liveFacts(ledger.entries);
  const openedFact = counting(facts, "job-opened")[0];
  const taken = new Map<string, Whats["version-taken-over"]>();
  for (const fact of counting(facts, "version-taken-over")) {
    const what = whatOf(fact, "version-taken-over");
    taken.set(what.thing === "kit card" ? `kit card ${what.name}` : what.thing, what);
  }
  const sheetTaken = taken.get("sheet");
  const sheetJson = sheetTaken && ledger.versions[sheetTaken.digest];
  const sheet = sheetJson === undefined ? undefined : readSheet(sheetJson);
  const settingsTaken = taken.get("settings");
  const settings = settingsTaken && ledger.versions[settingsTaken.digest];
  const kitCards = [...taken.values()]
    .filter((t) => t.thing === "kit card")
    .map((t) => ledger.versions[t.digest] as unknown as KitCard | undefined)
    .filter((card) => card !== undefined);
  const tags: Tag[] = [];
  for (const fact of counting(facts, "tag-named")) {
    const { set, tag, hiddenBy } = whatOf(fact, "tag-named");
    const at = tags.findIndex((t) => t.set === set && t.tag === tag);
    const named = { set, tag, hiddenBy, entry: fact.id };
    if (at < 0) tags.push(named);
    else tags[at] = named;
  }
  const setUps = new Map(
    counting(facts, "set-up-made").map((fact) => [fact.id, { id: fact.id, position: fact.position, ...whatOf(fact, "set-up-made") }]),
  );
  const sheetValue = sheet?.ok ? sheet.value : undefined;
  return {
    ledger,
    facts,
    byItem: indexByItem(facts),
    ...(openedFact ? { opened: whatOf(openedFact, "job-opened") } : {}),
    ...(sheetValue && sheetTaken ? { sheet: sheetValue, sheetDigest: sheetTaken.digest } : {}),
    kitCards,
    ...(settings === undefined ? {} : { settings }),
    tags,
    setUps,
    cuts: cutsOf(facts),
  };
}

/** The state as it stood before a place in the order of the work: for what counted before rework. */
export function stateBefore(state: JobState, position: number): JobState {
  const facts = state.facts.filter((fact) => fact.position < position);
  return { ...state, facts, byItem: indexByItem(facts), cuts: state.cuts.filter((cut) => cut.position < position) };
}

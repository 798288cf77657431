import type { About } from "../fact.ts";
import type { Finding } from "../finding.ts";
import { findings } from "../findings.ts";
import { happenedAt, type Live } from "../live.ts";
import { seriesOf } from "../series.ts";
import type { NightMatter, ToleranceSheet } from "../sheet.ts";
import { factsOf, type JobState } from "../state.ts";
import { openGround } from "./open-ground.ts";
import { itemsWhere, type Said, said } from "./said.ts";
import { waterWhen } from "./water-when.ts";

/** One thing to look at before everybody leaves. Nothing here calls anything safe: it says what was entered and when. */
export interface NightLine {
  readonly about: NightMatter | "water in the basin" | "glue";
  /** `not so`: what was entered is not as it is wanted. `look again`: entered before this visit. `waits`: over at `from`. */
  readonly state: "entered" | "missing" | "not so" | "look again" | "waits";
  readonly says: Said;
  /** Items to take for it, the first of them nearest. */
  readonly missing: readonly About[];
  readonly entries: readonly string[];
  readonly from?: number;
}

export interface LeavingTonight {
  /** Ids of the coverings that leave something open in the ground. Nothing open and no glue fresh: nobody needs to ask. */
  readonly open: readonly string[];
  /** What was entered from this instant on counts for tonight: the begin of this visit. */
  readonly since: number;
  readonly lines: readonly NightLine[];
}

/** A visit that nobody began counts from so long ago, milliseconds: a long working day (own). */
const LONG_DAY = 16 * 60 * 60 * 1000;

function visitSince(state: JobState, now: number): number {
  const begun = factsOf(state, "visit-begun")
    .map(happenedAt)
    .filter((at) => at <= now);
  return Math.max(now - LONG_DAY, ...begun.slice(-1));
}

/** The entries of tonight about one matter, newest last, and whether the last answer is as wanted. */
function tonight(state: JobState, matter: NightMatter, since: number): Pick<NightLine, "state" | "missing" | "entries"> {
  const items = itemsWhere(state, (item) => item.tonight === matter);
  const entered = items.map((item) => ({
    item,
    facts: seriesOf(state, { item }).counting.filter((fact) => happenedAt(fact) >= since),
  }));
  const refuses = entered.some(({ item, facts }) => {
    const choice = item.choices?.find(({ id }) => id === facts.at(-1)?.what.choice);
    return choice !== undefined && !choice.accepts;
  });
  const all = entered.flatMap(({ facts }) => facts);
  const missing = entered.filter(({ facts }) => facts.length === 0).map(({ item }) => ({ item: item.id }));
  return {
    state: refuses ? "not so" : all.length > 0 ? "entered" : "missing",
    missing: refuses ? entered.flatMap(({ item }) => (item.kind === "answer" ? [{ item: item.id }] : [])) : missing,
    entries: all.map(({ id }) => id),
  };
}

const slug = (state: NightLine["state"]): string => state.replaceAll(" ", "-");

/** The finding that says how much water is to stand inside: the one that was read last, else the first that is asked. */
function waterFinding(sheet: ToleranceSheet, all: readonly Finding[], positionOf: (entry: string) => number): Finding | undefined {
  const asked = all.filter(({ of, check }) => {
    const upper = of === "check" ? sheet.checks.find(({ id }) => id === check)?.upper : undefined;
    return typeof upper === "object" && upper.function === "water left inside";
  });
  const newest = (finding: Finding): number => Math.max(-1, ...finding.entries.map(positionOf));
  return asked.reduce<Finding | undefined>((best, one) => (best === undefined || newest(one) > newest(best) ? one : best), undefined);
}

function waterLine(state: JobState, sheet: ToleranceSheet, all: readonly Finding[], since: number): readonly NightLine[] {
  const facts = new Map<string, Live>(state.facts.map((fact) => [fact.id, fact]));
  const finding = waterFinding(sheet, all, (entry) => facts.get(entry)?.position ?? -1);
  if (finding === undefined) return [];
  const { value, upper, leaves, verdict, entries, missing = [] } = finding;
  const at = Math.max(...entries.map((entry) => facts.get(entry)).map((fact) => (fact ? happenedAt(fact) : Number.NEGATIVE_INFINITY)));
  const read = value === undefined ? "missing" : verdict !== "within" ? "not so" : at < since ? "look again" : "entered";
  const figures = {
    ...(value === undefined ? {} : { downLength: value, readInstant: at }),
    ...(upper === undefined ? {} : { mostLength: upper }),
    ...(leaves === undefined ? {} : { leaveLength: leaves.depth }),
  };
  const items = sheet.checks.find(({ id }) => id === finding.check)?.items ?? [];
  const again = read === "entered" ? [] : missing.length > 0 ? missing : items.map((item): About => ({ item }));
  const key = value === undefined && leaves === undefined ? "night.water-not-known" : `night.water-${slug(read)}`;
  return [{ about: "water in the basin", state: read, says: said(key, figures), missing: again, entries }];
}

function glueLines(state: JobState, now: number, all: readonly Finding[], since: number): readonly NightLine[] {
  return waterWhen(state, now, all).lines.flatMap((line): readonly NightLine[] => {
    const { water } = line;
    const isFresh = line.since !== undefined && (line.since >= since || !water.passed);
    const says = line.says.at(-1);
    if (!isFresh || says === undefined) return [];
    const standing = water.from === undefined ? "missing" : water.passed ? "entered" : "waits";
    const from = water.from === undefined ? {} : { from: water.from };
    return [{ about: "glue", state: standing, says, missing: water.missing, entries: [], ...from }];
  });
}

/**
 * What to look at before the crew leaves, at `now` (ms): what stands open and whether it is fenced or covered, the pump, the water in
 * the basin against what floats it, and glue that is still fresh with the instant from which it may be wetted.
 */
export function leavingTonight(state: JobState, now: number, all: readonly Finding[] = findings(state)): LeavingTonight {
  const { sheet } = state;
  const since = visitSince(state, now);
  const open = openGround(state);
  if (sheet === undefined) return { open: [], since, lines: [] };
  const holes = open.flatMap(({ leavesOpen }) => leavesOpen ?? []);
  const matter = (about: NightMatter): NightLine => {
    const found = tonight(state, about, since);
    return { about, ...found, says: said(`night.${about}-${slug(found.state)}`, {}, about === "holes" ? { what: holes } : {}) };
  };
  const ground = open.length === 0 ? [] : [matter("holes"), matter("pump"), ...waterLine(state, sheet, all, since)];
  return { open: open.map(({ id }) => id), since, lines: [...ground, ...glueLines(state, now, all, since)] };
}

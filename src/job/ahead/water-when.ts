import type { LabelledProduct } from "../../plumbing/index.ts";
import { instanceFor } from "../evaluation.ts";
import type { About } from "../fact.ts";
import type { Finding } from "../finding.ts";
import { findings } from "../findings.ts";
import { meaningOf } from "../meaning.ts";
import { readingsOf } from "../measured.ts";
import { type Check, itemNamed, type LimitFunction, type ToleranceSheet, tagSetOf } from "../sheet.ts";
import type { JobState } from "../state.ts";
import type { Words } from "../words.ts";
import { type Said, said, tagWords } from "./said.ts";

/** A time that something waits for. Instants in milliseconds since 1970 UTC. */
export interface Wait {
  /** Id of the check. */
  readonly check: string;
  /** Over from this instant on; absent while it is not known. */
  readonly from?: number;
  readonly passed: boolean;
  readonly missing: readonly About[];
  /** Figures of design or kit card that it waits for. */
  readonly unknown: readonly string[];
}

/** One glue session, or one thing that waits by its label. */
export interface WaitLine {
  readonly of: "glue session" | "label";
  readonly tag?: string;
  readonly name: Words;
  readonly product?: LabelledProduct;
  /** When its last joint was made, or it was put on. */
  readonly since?: number;
  /** Releases handling and backfill around the joint. Only of glue. */
  readonly set?: Wait;
  /** Releases water. */
  readonly water: Wait;
  readonly says: readonly Said[];
}

export interface WaterWhen {
  readonly lines: readonly WaitLine[];
  /** The line whose time is over last, and from when on: water waits for it. Absent while one of them is not known. */
  readonly decides?: WaitLine;
  readonly from?: number;
  readonly passed: boolean;
  readonly says: Said;
}

const waitsBy = (check: Check): LimitFunction | undefined =>
  check.function === "time passed since" && typeof check.lower === "object" ? check.lower.function : undefined;

const waitOf = ({ check, from, missing = [], unknown = [] }: Finding, now: number): Wait => ({
  check,
  ...(from === undefined ? {} : { from }),
  passed: from !== undefined && from <= now,
  missing,
  unknown,
});

const products: readonly LabelledProduct[] = ["sealant", "patch primer", "foam"];

interface Waiting {
  readonly check: Check;
  readonly finding: Finding;
  readonly by: LimitFunction;
}

function sentencesOf(by: "set" | "cure" | "label", name: Words, { from, passed }: Wait): Said {
  const state = from === undefined ? "not-known" : passed ? "over" : "from";
  return said(`wait.${by}-${state}`, from === undefined ? {} : { fromInstant: from }, { what: [name] });
}

function lineOf(state: JobState, sheet: ToleranceSheet, water: Waiting, set: Waiting | undefined, now: number): WaitLine {
  const { check, finding } = water;
  const { tag } = finding;
  const instances = sheet.items.filter((item) => item.tags === tagSetOf(sheet.items, check)).map((item) => instanceFor(item, tag));
  const product = products.find((one) => meaningOf(state, instances)?.includes(one));
  const [first] = check.items;
  const item = first === undefined ? undefined : itemNamed(sheet, first);
  const since = item && readingsOf(state, instanceFor(item, tag)).map(({ value }) => Math.round(value.value * 1000));
  const name = tag === undefined ? check.title : tagWords(state, tagSetOf(sheet.items, check), tag);
  const isGlue = water.by === "cure time";
  const [waits, sets] = [waitOf(finding, now), set && waitOf(set.finding, now)];
  return {
    of: isGlue ? "glue session" : "label",
    ...(tag === undefined ? {} : { tag }),
    name,
    ...(product ? { product } : {}),
    ...(since && since.length > 0 ? { since: Math.max(...since) } : {}),
    ...(sets ? { set: sets } : {}),
    water: waits,
    says: [...(sets ? [sentencesOf("set", name, sets)] : []), sentencesOf(isGlue ? "cure" : "label", name, waits)],
  };
}

function sentence(lines: readonly WaitLine[], decides: WaitLine | undefined, open: readonly WaitLine[]): Said {
  if (lines.length === 0) return said("water.nothing-waits");
  if (open.length > 0) return said("water.not-known", {}, { what: open.map(({ name }) => name) });
  const { name, water } = decides as WaitLine;
  return said(water.passed ? "water.over" : "water.from", { fromInstant: water.from ?? 0 }, { what: [name] });
}

/**
 * When water may come: every glue session with its set and cure time, everything that waits by its label, which of them is over
 * last, and whether that has passed at `now` (ms). It knows of times alone: what is dry to hand is an answer of its own.
 */
export function waterWhen(state: JobState, now: number, all: readonly Finding[] = findings(state)): WaterWhen {
  const { sheet } = state;
  if (sheet === undefined) return { lines: [], passed: false, says: said("water.nothing-waits") };
  const waiting = all.flatMap((finding): readonly Waiting[] => {
    const check = finding.of === "check" ? sheet.checks.find(({ id }) => id === finding.check) : undefined;
    const by = check && waitsBy(check);
    return check === undefined || by === undefined || finding.verdict === "does not apply" ? [] : [{ check, finding, by }];
  });
  const sets = waiting.filter(({ by }) => by === "set time");
  const lines = waiting
    .filter(({ by }) => by === "cure time" || by === "as typed")
    .map((water) => {
      const own = water.by === "cure time" ? sets.find(({ finding }) => finding.tag === water.finding.tag) : undefined;
      return lineOf(state, sheet, water, own, now);
    });
  const open = lines.filter(({ water }) => water.from === undefined);
  const last = lines.reduce<WaitLine | undefined>(
    (latest, line) => (latest === undefined || (line.water.from ?? 0) > (latest.water.from ?? 0) ? line : latest),
    undefined,
  );
  const decides = open.length > 0 ? undefined : last;
  return {
    lines,
    ...(decides ? { decides } : {}),
    ...(decides?.water.from === undefined ? {} : { from: decides.water.from }),
    passed: decides?.water.passed === true,
    says: sentence(lines, decides, open),
  };
}

import type { Json } from "../../ledger/index.ts";
import { clearances } from "../clearance.ts";
import type { About, Entry } from "../fact.ts";
import type { Clearance, Finding } from "../finding.ts";
import { findings } from "../findings.ts";
import { happenedAt } from "../live.ts";
import { factsOf, type JobLedger, type JobState, jobState } from "../state.ts";

/** A version of one of the company's things that a job could take over. */
export interface VersionOffered {
  readonly thing: "sheet" | "kit card";
  readonly name: string;
  readonly number: number;
  readonly digest: string;
  readonly content: Json;
}

/** A finding that would read otherwise: absent before, it is new; absent after, nothing asks for it any more. */
export interface FindingMoved {
  readonly before?: Finding;
  readonly after?: Finding;
}

/** What taking over another version would change of a job. */
export interface VersionMove {
  readonly before: JobState;
  readonly after: JobState;
  /** In the order of the later sheet's steps; those that would go, last. */
  readonly findings: readonly FindingMoved[];
  /** Coverings that would stand otherwise. */
  readonly coverings: readonly { readonly before?: Clearance; readonly after?: Clearance }[];
  /** Items that were entered and that the later version does not have: kept in the ledger, judged by nothing. */
  readonly left: readonly About[];
}

const NOW = "version-offered";

/** The job as it would be with one more entry: the version taken over at the end of everything that is known. */
function withVersion({ entries, versions }: JobLedger, { content, ...what }: VersionOffered): JobLedger {
  const last = Math.max(0, ...entries.map(({ made, received }) => Math.max(made, received ?? 0)));
  const entry: Entry = {
    id: NOW,
    digest: "",
    kind: "version-taken-over",
    author: { person: "", phone: NOW },
    run: 0,
    made: last,
    sent: last,
    received: last,
    number: entries.length + 1,
    what: { ...what },
  };
  return { entries: [...entries, entry], versions: { ...versions, [what.digest]: content } };
}

const keyOf = ({ check, of, tag, holds }: Finding): string => JSON.stringify([of, check, tag ?? "", of === "tag set" ? (holds ?? "") : ""]);

/** What of a finding somebody would read otherwise. */
const read = ({ verdict, weight, holds, value, doubt, aim, lower, upper, missing = [], from, by }: Finding): string =>
  JSON.stringify([verdict, weight, holds, value, doubt, aim, lower, upper, missing, from, by?.way]);

function findingsMoved(before: readonly Finding[], after: readonly Finding[]): readonly FindingMoved[] {
  const was = new Map(before.map((finding) => [keyOf(finding), finding]));
  const is = new Set(after.map(keyOf));
  return [
    ...after.flatMap((finding): readonly FindingMoved[] => {
      const earlier = was.get(keyOf(finding));
      if (earlier === undefined) return [{ after: finding }];
      return read(earlier) === read(finding) ? [] : [{ before: earlier, after: finding }];
    }),
    ...before.filter((finding) => !is.has(keyOf(finding))).map((finding) => ({ before: finding })),
  ];
}

const standing = ({ state, lines, covered }: Clearance): string => JSON.stringify([state, lines.length, covered?.laterDoubted]);

function coveringsMoved(before: readonly Clearance[], after: readonly Clearance[]): VersionMove["coverings"] {
  const was = new Map(before.map((clearance) => [clearance.covering, clearance]));
  const is = new Set(after.map(({ covering }) => covering));
  return [
    ...after.flatMap((clearance) => {
      const earlier = was.get(clearance.covering);
      if (earlier === undefined) return [{ after: clearance }];
      return standing(earlier) === standing(clearance) ? [] : [{ before: earlier, after: clearance }];
    }),
    ...before.filter(({ covering }) => !is.has(covering)).map((clearance) => ({ before: clearance })),
  ];
}

/** What entries speak of items that a sheet does not have. */
function leftBehind({ facts, sheet }: JobState): readonly About[] {
  const known = new Set(sheet?.items.map(({ id }) => id));
  const left = new Map<string, About>();
  for (const { standing: counts, what } of facts) {
    const { item, tag } = what as { readonly item?: Json; readonly tag?: Json };
    if (counts !== "counts" || typeof item !== "string" || known.has(item)) continue;
    const about = typeof tag === "string" ? { item, tag } : { item };
    left.set(JSON.stringify(about), about);
  }
  return [...left.values()];
}

/** What a job would read otherwise if it took over this version, as of `now` (ms). Nothing is entered. */
export function movedToVersion(ledger: JobLedger, offered: VersionOffered, now: number): VersionMove {
  const [before, after] = [jobState(ledger), jobState(withVersion(ledger, offered))];
  const [was, is] = [findings(before), findings(after)];
  return {
    before,
    after,
    findings: findingsMoved(was, is),
    coverings: coveringsMoved(clearances(before, was, now), clearances(after, is, now)),
    left: leftBehind(after),
  };
}

/** A version as a job took it over, and when. */
export interface VersionTaken extends Omit<VersionOffered, "content" | "thing"> {
  readonly thing: VersionOffered["thing"] | "settings";
  /** Milliseconds. */
  readonly at: number;
  /** Of its thing, the one that the job is judged by now. */
  readonly current: boolean;
}

/** Every version that a job took over, in the order of the work; none is ever dropped. */
export function versionsTaken(state: JobState): readonly VersionTaken[] {
  const all = factsOf(state, "version-taken-over");
  const thingOf = ({ thing, name }: { readonly thing: string; readonly name: string }): string =>
    thing === "kit card" ? `${thing} ${name}` : thing;
  const newest = new Map(all.map((fact) => [thingOf(fact.what), fact.id]));
  return all.map((fact) => ({ ...fact.what, at: happenedAt(fact), current: newest.get(thingOf(fact.what)) === fact.id }));
}

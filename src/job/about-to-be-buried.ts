import { openGround } from "./ahead/open-ground.ts";
import { itemsWhere, tagWords } from "./ahead/said.ts";
import type { About, Entry } from "./fact.ts";
import type { Clearance, Finding } from "./finding.ts";
import { aboutOfFinding } from "./lines.ts";
import { happenedAt } from "./live.ts";
import { photoComparisons } from "./photo-scale/index.ts";
import { lookAt, picturesToLookAt } from "./picture-facts/index.ts";
import { seriesOf } from "./series.ts";
import { itemNamed, type ToleranceSheet, type Words } from "./sheet.ts";
import { factsOf, type JobState } from "./state.ts";
import { atWork } from "./visits.ts";

/** What the office's list says of a job, in the order in which it is said. */
export const buriedKinds = [
  "announced",
  "covered on a not yet",
  "later doubted",
  "covered unsaid",
  "outside",
  "too close to call",
  "tape and photo disagree",
  "unreadable",
  "seen before",
  "to look at",
  "open tonight",
  "phone silent",
] as const;
export type BuriedKind = (typeof buriedKinds)[number];

/** One thing that is about to be buried, was buried so, or stands open. Instants in milliseconds. */
export interface BuriedLine {
  readonly is: BuriedKind;
  /** The act of the covering, what stands open, or what an item or check is called. */
  readonly title?: Words;
  readonly covering?: string;
  /** What a decision about it would name. */
  readonly about?: About;
  /** Announced for, covered at, last answered, or last heard of. */
  readonly at?: number;
  /** It has gone by itself from this instant on. */
  readonly from?: number;
  /** Lines that hold, or pictures. */
  readonly count?: number;
  /** Of an open hole: whether the last answer about tonight is as wanted. */
  readonly tonight?: "entered" | "not so" | "missing";
  /** Who entered last from a phone, and which phone. */
  readonly person?: string;
  readonly phone?: string;
}

export interface AboutToBeBuried {
  readonly lines: readonly BuriedLine[];
  /** The soonest time that an open covering was announced for. */
  readonly soonest?: number;
  /** Photos that count in the job and that nobody has looked at, by hash: what else shows the same is nobody's work after that. */
  readonly unlooked: readonly string[];
}

const actOf = (sheet: ToleranceSheet, covering: string): { readonly title?: Words } => {
  const title = sheet.coverings.find(({ id }) => id === covering)?.title;
  return title === undefined ? {} : { title };
};

/** The instant from which nothing holds any more, where all that holds waits for its time. */
function clearsFrom({ lines }: Clearance): { readonly from?: number } {
  const waits = lines.map(({ from }) => from ?? Number.POSITIVE_INFINITY);
  const from = Math.max(...waits);
  return Number.isFinite(from) ? { from } : {};
}

function coveringLine(sheet: ToleranceSheet, clearance: Clearance): readonly BuriedLine[] {
  const { covering, state, covered, announced, lines } = clearance;
  const own = { covering, ...actOf(sheet, covering), count: lines.length, ...clearsFrom(clearance) };
  if (state !== "not yet" || covered?.beforeRecord) return [];
  if (covered === undefined) return announced === undefined ? [] : [{ is: "announced", ...own, at: announced.about }];
  const is = covered.laterDoubted ? "later doubted" : covered.shown === undefined ? "covered unsaid" : "covered on a not yet";
  return [{ is, ...own, at: covered.at }];
}

/** What an item or a check is called, with its tag. */
function titleOf(state: JobState, sheet: ToleranceSheet, { item, check, tag }: About): Words {
  const asked = sheet.checks.find(({ id }) => id === check);
  const own = item === undefined ? undefined : itemNamed(sheet, item);
  const title = asked?.title ?? own?.title ?? { en: item ?? check ?? "" };
  if (tag === undefined) return title;
  const set = own?.tags ?? asked?.items.map((id) => itemNamed(sheet, id)?.tags).find((tags) => tags !== undefined);
  const named = tagWords(state, set, tag);
  const spanish = title.es === undefined || named.es === undefined ? {} : { es: `${title.es}, ${named.es}` };
  return { en: `${title.en}, ${named.en}`, ...spanish };
}

/** What a person has to decide about: entered, judged, and not as asked. What an electrician is asked is not judged here. */
export const isToDecide = ({ verdict, by, asks, weight, of }: Finding): boolean =>
  by === undefined &&
  asks === undefined &&
  weight !== "if you have it" &&
  of !== "tag set" &&
  (verdict === "outside" || verdict === "too close to call");

function findingLine(state: JobState, sheet: ToleranceSheet, finding: Finding): BuriedLine {
  const about = aboutOfFinding(finding);
  const { verdict, says, holds } = finding;
  const is = says.key === "picture.unreadable" ? "unreadable" : verdict === "outside" ? "outside" : "too close to call";
  return { is, about, title: titleOf(state, sheet, about), ...(holds === undefined ? {} : { covering: holds }) };
}

/** Where tape and photo differ, until either is taken again. */
function disagreeingLines(state: JobState, sheet: ToleranceSheet): readonly BuriedLine[] {
  return photoComparisons(state, "all").flatMap(({ says, item, tag }): readonly BuriedLine[] => {
    const about: About = tag === undefined ? { item } : { item, tag };
    return says === "disagree" ? [{ is: "tape and photo disagree", about, title: titleOf(state, sheet, about) }] : [];
  });
}

/** The pictures to look at are one piece of work: one line, with the covering that the first of them holds. */
function lookingLine(state: JobState, sheet: ToleranceSheet): readonly BuriedLine[] {
  const all = picturesToLookAt(state);
  const first = all[0];
  return first === undefined ? [] : [{ is: "to look at", covering: first.covering, ...actOf(sheet, first.covering), count: all.length }];
}

function openLines(state: JobState): readonly BuriedLine[] {
  const answers = itemsWhere(state, ({ tonight, kind }) => tonight === "holes" && kind === "answer").flatMap((item) =>
    seriesOf(state, { item }).counting.map((fact) => ({
      at: Math.round(happenedAt(fact)),
      accepts: item.choices?.find(({ id }) => id === fact.what.choice)?.accepts === true,
    })),
  );
  const last = answers.sort((a, b) => a.at - b.at).at(-1);
  const tonight = last === undefined ? "missing" : last.accepts ? "entered" : "not so";
  return openGround(state).map(({ id, leavesOpen }) => ({
    is: "open tonight",
    covering: id,
    ...(leavesOpen === undefined ? {} : { title: leavesOpen }),
    tonight,
    ...(last === undefined ? {} : { at: last.at }),
  }));
}

/** When each phone was last heard of; one that ended its visit is not waited for. */
function phoneLines({ ledger }: JobState): readonly BuriedLine[] {
  const phones = new Map<string, Entry[]>();
  for (const entry of ledger.entries) {
    const known = phones.get(entry.author.phone);
    if (entry.received === undefined) continue;
    if (known === undefined) phones.set(entry.author.phone, [entry]);
    else known.push(entry);
  }
  return [...phones].flatMap(([phone, entries]): readonly BuriedLine[] => {
    const last = [...entries].sort((a, b) => a.run - b.run).at(-1);
    const isAway = last === undefined || last.kind === "visit-ended" || !entries.some(({ kind }) => atWork.has(kind));
    const at = Math.max(...entries.map(({ received = 0 }) => received));
    return isAway ? [] : [{ is: "phone silent", phone, person: last.author.person, at }];
  });
}

function unlookedPhotos(state: JobState): readonly string[] {
  const pictures = [...factsOf(state, "picture-taken"), ...factsOf(state, "received-otherwise")];
  return [...new Set(pictures.filter(({ id }) => lookAt(state, id) === undefined).map(({ what }) => what.photo))];
}

/**
 * What one job has to say to the office while something can still be done about it. Knows no present: what waits for a time says
 * from when on it has gone, and how long a phone has been silent is for the reader to say. Once the job was handed over only
 * its coverings and open ground speak.
 */
export function aboutToBeBuried(state: JobState, all: readonly Finding[], coverings: readonly Clearance[]): AboutToBeBuried {
  const { sheet } = state;
  if (sheet === undefined) return { lines: [], unlooked: [] };
  const soonest = Math.min(...coverings.flatMap(({ covered, announced }) => (covered || !announced ? [] : [announced.about])));
  const over = (["signed", "delivered-unsigned", "in-use"] as const).some((kind) => factsOf(state, kind).length > 0);
  const isOpen = coverings.some(({ covered }) => covered === undefined);
  const running = [
    ...all.filter(isToDecide).map((finding) => findingLine(state, sheet, finding)),
    ...disagreeingLines(state, sheet),
    ...lookingLine(state, sheet),
    ...(isOpen ? phoneLines(state) : []),
  ];
  const lines = [...coverings.flatMap((one) => coveringLine(sheet, one)), ...(over ? [] : running), ...openLines(state)];
  return {
    lines: lines.sort((a, b) => buriedKinds.indexOf(a.is) - buriedKinds.indexOf(b.is)),
    ...(Number.isFinite(soonest) ? { soonest } : {}),
    unlooked: over ? [] : unlookedPhotos(state),
  };
}

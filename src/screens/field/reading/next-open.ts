import {
  type About,
  askedItems,
  type Finding,
  type Instance,
  type Item,
  isEntered,
  type JobState,
  type TagSet,
} from "../../../job/index.ts";
import type { Say } from "../../parts/words/index.ts";
import { isSetUp } from "../covering/points.ts";
import { setUpPath, takePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";

type Told = Pick<ToldOnPhone, "now">;

/** Worked out once for each owner, which never changes: an old phone asks it for every row of a page. */
function once<Owner extends object, Value>(compute: (owner: Owner, told: Told) => Value): (owner: Owner, told: Told) => Value {
  const kept = new WeakMap<Owner, Value>();
  return (owner, told) => {
    const value = kept.get(owner) ?? compute(owner, told);
    kept.set(owner, value);
    return value;
  };
}

const askedAll = once((state: JobState): readonly Instance[] => (state.sheet === undefined ? [] : askedItems(state, state.sheet)));

/** The instances that a step asks, in the order of the tolerance sheet; those of one tag where one is named. */
export function askedIn(told: Told, step: string, tag?: string): readonly Instance[] {
  return askedAll(told.now.state, told).filter(
    ({ item, tag: own }) => item.step === step && (tag === undefined || own === undefined || own === tag),
  );
}

/** What comes next: where it is entered, and what it is. */
export interface NextOpen {
  readonly path: string;
  readonly about: About;
  /** The step whose places are read together there, from one standing of an instrument. */
  readonly setUpOf?: string;
}

/** What stands on the way there. */
export function titleOfNext({ about, setUpOf }: NextOpen, { now, sayer }: Pick<ToldOnPhone, "now" | "sayer">, say: Say): string {
  if (setUpOf === undefined) return sayer.title(about);
  return say("set-up-of", { title: sayer.words(now.state.sheet?.steps.find(({ id }) => id === setUpOf)?.title) });
}

const keyOf = (item: string | undefined, tag: string | undefined): string => `${item ?? ""} ${tag ?? ""}`;

/** What is asked for by a finding of its own, or by a check that waits for it. */
const wanted = once((findings: readonly Finding[]): ReadonlySet<string> => {
  const waiting = findings.filter(({ verdict }) => verdict === "not taken");
  return new Set([
    ...waiting.filter(({ of }) => of !== "check" && of !== "tag set").map(({ check, tag }) => keyOf(check, tag)),
    ...waiting.flatMap(({ missing = [] }) => missing.map(({ item, tag }) => keyOf(item, tag))),
  ]);
});

/** What somebody is asked for and has not entered; what has a decision of its own, or belongs to a way that was not gone, is not. */
function isOpen(told: Told, instance: Instance): boolean {
  const { item, tag } = instance;
  if (item.apart === true || item.weight === "if you have it" || !wanted(told.now.findings, told).has(keyOf(item.id, tag))) return false;
  return !isEntered(told.now.state, instance);
}

/** Readings of one standing of an instrument are taken on a page of their own. */
export function placeOf(told: Told, job: string, { item, tag }: Instance): NextOpen {
  const { sheet } = told.now.state;
  const named = tag === undefined ? {} : { tag };
  const inSetUp = item.inSetUp === true ? sheet?.checks.filter((check) => check.step === item.step && isSetUp(sheet, check)) : undefined;
  const asked = inSetUp?.find(({ id }) => told.now.findings.some((finding) => finding.of === "check" && finding.check === id));
  if (asked !== undefined) return { path: setUpPath(job, asked.id, tag), about: { check: asked.id, ...named }, setUpOf: asked.step };
  return { path: takePath(job, item.id, tag), about: { item: item.id, ...named } };
}

/** The next thing of the same step that is open, after this one. */
export function nextOpen(told: Told, job: string, { id, step }: Pick<Item, "id" | "step">, tag: string | undefined): NextOpen | undefined {
  const asked = askedIn(told, step, tag);
  const here = asked.findIndex((one) => one.item.id === id && one.tag === tag);
  const open = [...asked.slice(here + 1), ...asked.slice(0, Math.max(0, here))].find((one) => isOpen(told, one));
  return open && placeOf(told, job, open);
}

/** The first open thing of a step. */
export function firstOpen(told: Told, job: string, step: string, tag?: string): NextOpen | undefined {
  const open = askedIn(told, step, tag).find((one) => isOpen(told, one));
  return open && placeOf(told, job, open);
}

/** Everything that is open in a step besides one thing, each page once. */
export function alsoOpen(told: Told, job: string, { id, step }: Pick<Item, "id" | "step">, tag: string | undefined): readonly NextOpen[] {
  const open = askedIn(told, step, tag).filter((one) => isOpen(told, one) && !(one.item.id === id && one.tag === tag));
  return [...new Map(open.map((one) => placeOf(told, job, one)).map((place) => [place.path, place])).values()];
}

/** The first of the things that repeat in a step of which fewer are named than there must be. */
export function unnamedIn({ now: { state } }: Told, step: string): TagSet | undefined {
  const sets = new Set((state.sheet?.items ?? []).filter((item) => item.step === step).map(({ tags }) => tags));
  return state.sheet?.tagSets.find(({ id, least }) => sets.has(id) && state.tags.filter(({ set }) => set === id).length < least);
}

/** The next step, after this one, that has something open; the office's own steps are not the crew's. */
export function nextStep(told: Told, step: string): string | undefined {
  const steps = (told.now.state.sheet?.steps ?? []).filter(({ office }) => office !== true);
  const here = steps.findIndex(({ id }) => id === step);
  const goesOn = (id: string): boolean => unnamedIn(told, id) !== undefined || askedIn(told, id).some((one) => isOpen(told, one));
  return steps.slice(here + 1).find(({ id }) => goesOn(id))?.id;
}

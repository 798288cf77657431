import type { Json } from "../ledger/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { readQuantity } from "../reading/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { About, Typed, Whats } from "./fact.ts";
import { figureAsked } from "./figures.ts";
import { askedOf } from "./measured.ts";
import { isMeasurable, photoMeasured } from "./photo-scale/index.ts";
import { type Item, type ToleranceSheet, tagSetOf } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** Judges what one kind of fact names; its shape has been judged before. */
type Judge = (state: JobState, sheet: ToleranceSheet, what: never) => Outcome<void>;

export const fine: Outcome<void> = ok(undefined);

/** The first refusal among them. */
const all = (outcomes: readonly Outcome<unknown>[]): Outcome<void> => {
  const refused = outcomes.find((outcome) => !outcome.ok);
  return refused && !refused.ok ? refused : fine;
};

function tagIn(state: JobState, set: string | undefined, tag: string | undefined, place: string): Outcome<void> {
  const known = set === undefined ? tag === undefined : state.tags.some((t) => t.set === set && t.tag === tag);
  return known ? fine : refuse("entry-unknown-tag", place, { tag: tag ?? "" });
}

function known(things: readonly { readonly id: string }[], id: string | undefined, place: string): Outcome<void> {
  return id === undefined || things.some((thing) => thing.id === id) ? fine : refuse("entry-unknown-item", place, { item: id });
}

function readable(typed: Typed | undefined, kind: QuantityKind, place: string): Outcome<unknown> {
  return typed === undefined ? fine : readQuantity(typed.typed, { kind, unit: typed.unit, signed: true, place: `${place}/typed` });
}

const covering = (sheet: ToleranceSheet, id: string, place: string): Outcome<void> =>
  sheet.coverings.some((c) => c.id === id) ? fine : refuse("entry-unknown-covering", place, { covering: id });

function about(state: JobState, sheet: ToleranceSheet, named: About, place: string): Outcome<void> {
  const item = sheet.items.find((i) => i.id === named.item);
  const check = sheet.checks.find((c) => c.id === named.check);
  const isOne = item ? named.check === undefined : check !== undefined && named.item === undefined;
  if (!isOne) return refuse("entry-unknown-item", place, { item: named.item ?? named.check ?? "" });
  if (named.tag === undefined) return fine;
  return tagIn(state, item ? item.tags : check && tagSetOf(sheet.items, check), named.tag, `${place}/tag`);
}

/** An item of this kind, and its tag where it repeats. */
function entered(
  state: JobState,
  sheet: ToleranceSheet,
  kind: Item["kind"] | readonly Item["kind"][],
  what: { readonly item: string; readonly tag?: string },
  then: (item: Item) => Outcome<unknown> = () => fine,
): Outcome<void> {
  const item = sheet.items.find((i) => i.id === what.item && [kind].flat().includes(i.kind));
  if (item === undefined) return refuse("entry-unknown-item", "what/item", { item: what.item });
  return all([tagIn(state, item.tags, what.tag, "what/tag"), then(item)]);
}

function reading(sheet: ToleranceSheet, what: Whats["reading-taken"], item: Item): Outcome<void> {
  const noSetUp = item.inSetUp === true && what.setUp === undefined;
  return all([
    readQuantity(what.typed, { ...askedOf(item, what.unit), place: "what/typed" }),
    noSetUp ? refuse("entry-unknown-setup", "what/setUp", { setUp: "" }) : fine,
    known(sheet.placings, what.placing, "what/placing"),
    known(sheet.instruments, what.instrument, "what/instrument"),
    readable(what.distance, "length", "what/distance"),
  ]);
}

/** A length that a photo can stand beside, and numbers that make one: what no phone of ours enters is not taken. */
function inPhoto(sheet: ToleranceSheet, what: Whats["photo-measured"], item: Item): Outcome<unknown> {
  if (!isMeasurable(sheet, item)) return refuse("entry-unknown-item", "what/item", { item: item.id });
  const found = photoMeasured(what);
  return found.ok ? fine : { ok: false, refusal: { ...found.refusal, place: `what/${found.refusal.place}` } };
}

function tagNamed(sheet: ToleranceSheet, what: Whats["tag-named"]): Outcome<void> {
  const set = sheet.tagSets.find((t) => t.id === what.set);
  if (set === undefined) return refuse("entry-unknown-tag", "what/set", { tag: what.set });
  return set.coverings.includes(what.hiddenBy) ? fine : refuse("entry-unknown-covering", "what/hiddenBy", { covering: what.hiddenBy });
}

function choice(what: Whats["answered"], item: Item): Outcome<void> {
  return item.choices?.some((c) => c.id === what.choice) ? fine : refuse("entry-unknown-item", "what/choice", { item: what.choice });
}

/** Of what the customer lives with, only he accepts it as built. */
function conceded(state: JobState, sheet: ToleranceSheet, what: Whats["concession"]): Outcome<void> {
  const { item, check } = what.about;
  const asks = [...sheet.items, ...sheet.checks].some(
    ({ id, customerAccepts }) => customerAccepts === true && (id === item || id === check),
  );
  const hisWord = !asks || (what.customerSaid ?? "").trim() !== "";
  return all([aboutOne(state, sheet, what), hisWord ? fine : refuse("entry-customer-word", "what/customerSaid", {})]);
}

const aboutOne = (state: JobState, sheet: ToleranceSheet, what: { readonly about: About }): Outcome<void> =>
  about(state, sheet, what.about, "what/about");
const aboutSome = (state: JobState, sheet: ToleranceSheet, list: readonly About[], place: string): Outcome<void> =>
  all(list.map((named, i) => about(state, sheet, named, `${place}/${i}`)));
const ofCovering = (_: JobState, sheet: ToleranceSheet, what: { readonly covering: string }): Outcome<void> =>
  covering(sheet, what.covering, "what/covering");

/** What is left to do is about an item, a check, or a whole step. */
function leftAbout(state: JobState, sheet: ToleranceSheet, named: About): Outcome<void> {
  if (named.step === undefined) return about(state, sheet, named, "what/about");
  const isStepAlone = named.item === undefined && named.check === undefined && named.tag === undefined;
  return isStepAlone ? known(sheet.steps, named.step, "what/about/step") : refuse("entry-unknown-item", "what/about", { item: named.step });
}

type Judges = { readonly [K in keyof Whats]?: (state: JobState, sheet: ToleranceSheet, what: Whats[K]) => Outcome<void> };

/** Kinds that name things of the tolerance sheet, and so need one. */
const judges: Judges = {
  "tag-named": (_, sheet, what) => tagNamed(sheet, what),
  "set-up-made": (_, sheet, what) =>
    all([known(sheet.instruments, what.instrument, "what/instrument"), readable(what.distance, "length", "what/distance")]),
  "reading-taken": (state, sheet, what) => entered(state, sheet, "reading", what, (item) => reading(sheet, what, item)),
  "read-again": (state, sheet, what) => entered(state, sheet, "reading", what, (item) => reading(sheet, what, item)),
  // beside a reading it is a picture of the tape
  "picture-taken": (state, sheet, what) => entered(state, sheet, ["picture", "reading"], what),
  "received-otherwise": (state, sheet, what) => entered(state, sheet, "picture", what),
  "photo-measured": (state, sheet, what) => entered(state, sheet, "reading", what, (item) => inPhoto(sheet, what, item)),
  answered: (state, sheet, what) => entered(state, sheet, "answer", what, (item) => choice(what, item)),
  "does-not-apply": aboutOne,
  "could-not-be-taken": aboutOne,
  "rework-asked": aboutOne,
  reworked: aboutOne,
  "departure-agreed": aboutOne,
  concession: conceded,
  "looked-again": aboutOne,
  "left-to-do": (state, sheet, what) => (what.about ? leftAbout(state, sheet, what.about) : fine),
  "covering-announced": ofCovering,
  covered: ofCovering,
  "opened-up-again": (state, sheet, what) =>
    all([ofCovering(state, sheet, what), aboutSome(state, sheet, what.exposed === "all" ? [] : what.exposed, "what/exposed")]),
  "go-ahead": (state, sheet, what) => all([ofCovering(state, sheet, what), aboutSome(state, sheet, what.about ?? [], "what/about")]),
  "design-set": (_, sheet, what) =>
    all(
      Object.entries(what.figures ?? {}).map(([key, figure]) => {
        const asked = figureAsked(sheet, key);
        const isRead = asked !== undefined && asked.kind !== "text" && figure !== "unknown";
        return isRead ? readable(figure, asked.kind, `what/figures/${key}`) : fine;
      }),
    ),
};

/** Kinds that say something without a tolerance sheet too, and name its things only where there is one. */
const standWithoutSheet: ReadonlySet<string> = new Set(["design-set", "left-to-do"]);

/** Whether everything that a fact names is there in the job's tolerance sheet. */
export function admitNames(state: JobState, kind: string, what: { readonly [key: string]: Json }): Outcome<void> {
  const judge: Judge | undefined = Object.hasOwn(judges, kind) ? (judges[kind as keyof Judges] as unknown as Judge) : undefined;
  if (judge === undefined) return fine;
  if (state.sheet) return judge(state, state.sheet, what as never);
  return standWithoutSheet.has(kind) ? fine : refuse("entry-unknown-version", "job", { digest: "" });
}

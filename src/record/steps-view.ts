import { type Finding, factsOf, type Item, type Live, type Step, type ToleranceSheet } from "../job/index.ts";
import { byId } from "./by-id.ts";
import type { Context } from "./context.ts";
import { findingView } from "./finding-view.ts";
import { measuredIn, saidBeside, titleOf, withMeasured } from "./measured-view.ts";
import type { FindingView, PictureView, StepView } from "./model.ts";
import { photoView } from "./pictures-view.ts";
import { countedIn, readingView } from "./readings-view.ts";
import { tagName } from "./tag-name.ts";

function cautionsOf(context: Context, step: Step): readonly string[] {
  const { sheet, sayer } = context;
  return step.cautions.map((id) => sayer.words(sheet.cautions.find((c) => c.id === id)?.text)).filter((caution) => caution !== "");
}

const pictureKinds: ReadonlySet<string> = new Set(["picture-taken", "received-otherwise"]);

function notesFor(context: Context, belongs: (step: string | undefined) => boolean): readonly string[] {
  const notes = factsOf(context.state, "note-for-record").filter(({ what }) => belongs(what.step));
  return notes.map((f) => `${f.what.text} (${context.nameOf(f)}, ${context.sayer.moment(f.at)})`);
}

/** Notes for the record that name no step of the tolerance sheet. */
export function freeNotes(context: Context): readonly string[] {
  const steps = new Set(context.sheet.steps.map(({ id }) => id));
  return notesFor(context, (step) => step === undefined || !steps.has(step));
}

/** What the step's numbers and tags stand for: where the numbered places lie, what each tag is. */
function explainsOf(context: Context, step: Step): readonly string[] {
  const { sheet, state, sayer } = context;
  const firstStepOf = (set: string): string | undefined =>
    sheet.steps.find(({ id }) => sheet.items.some((item) => item.step === id && item.tags === set))?.id;
  const tags = state.tags.filter(({ set, description }) => description !== undefined && firstStepOf(set) === step.id);
  return [...(step.note === undefined ? [] : [sayer.words(step.note)]), ...tags.map((tag) => tagName(context, tag))];
}

interface Entered {
  readonly fact: Live;
  readonly item: Item;
}

/** What was entered for each step, by its id. */
function enteredBySteps({ items }: ToleranceSheet, facts: readonly Live[]): ReadonlyMap<string, readonly Entered[]> {
  const known = byId(items);
  const entered = new Map<string, Entered[]>();
  for (const fact of facts) {
    const item = typeof fact.what.item === "string" ? known.get(fact.what.item) : undefined;
    if (item === undefined) continue;
    const before = entered.get(item.step);
    if (before === undefined) entered.set(item.step, [{ fact, item }]);
    else before.push({ fact, item });
  }
  return entered;
}

const sameTag = (view: FindingView, { fact }: Entered): boolean => view.tag === (fact.what.tag ?? undefined);

/** The pictures, each with the finding that it settles: said once, under the first that was taken. */
function picturesOf(context: Context, entered: readonly Entered[], findings: readonly FindingView[]): readonly PictureView[] {
  const said = new Set<FindingView>();
  return entered
    .filter(({ fact }) => pictureKinds.has(fact.kind) && fact.standing === "counts")
    .map((each) => {
      const { fact, item } = each;
      const own = findings.find((view) => view.check === item.id && view.shown === "list" && sameTag(view, each) && !said.has(view));
      if (own) said.add(own);
      const title = context.sayer.title({ item: item.id, ...(typeof fact.what.tag === "string" ? { tag: fact.what.tag } : {}) });
      return photoView(context, fact, title, own && { ...own, shown: "picture" });
    });
}

/** Lines over the pictures that were measured in; a photo that is no picture of this step prints behind them, under its reading's title. */
function withLines(context: Context, step: Step, pictures: readonly PictureView[]): readonly PictureView[] {
  const measured = measuredIn(context, step.id);
  const shown = new Set(pictures.map(({ photo }) => photo));
  const others = [...measured].flatMap(([photo, compared]) => {
    const [first] = compared;
    const { facts } = context.state;
    const fact =
      facts.find(({ kind, what }) => pictureKinds.has(kind) && what.photo === photo) ?? facts.find(({ id }) => id === first?.entry);
    return shown.has(photo) || first === undefined || fact === undefined ? [] : [photoView(context, fact, titleOf(context, first))];
  });
  return [...pictures, ...others].map((view) => withMeasured(context, view, measured.get(view.photo)));
}

function stepView(
  context: Context,
  step: Step,
  own: readonly Finding[],
  entered: readonly Entered[],
  counted: ReadonlySet<string>,
  besides: ReadonlyMap<string, string>,
): StepView {
  const views = own.map((finding) => findingView(context, finding));
  const pictures = withLines(context, step, picturesOf(context, entered, views));
  const underPictures = new Set(pictures.flatMap(({ finding }) => (finding ? [`${finding.check} ${finding.tag ?? ""}`] : [])));
  const isOwn = ({ standing }: Live): boolean => standing !== "moved out" || context.edition === "company";
  return {
    id: step.id,
    number: step.number,
    title: context.sayer.words(step.title),
    cautions: cautionsOf(context, step),
    explains: explainsOf(context, step),
    findings: views.map((view) => (underPictures.has(`${view.check} ${view.tag ?? ""}`) ? { ...view, shown: "picture" } : view)),
    readings: entered
      .filter(({ fact }) => fact.kind === "reading-taken" && isOwn(fact))
      .map(({ fact, item }) => readingView(context, fact, item, counted, besides)),
    pictures,
    notes: notesFor(context, (named) => named === step.id),
  };
}

/** Every step with its findings, readings as typed, pictures and notes. A step that this job does not ask is left out. */
export function stepViews(context: Context, findings: readonly Finding[]): readonly StepView[] {
  const { state, sheet } = context;
  const counted = countedIn(findings);
  const besides = saidBeside(context);
  const bySteps = enteredBySteps(sheet, state.facts);
  return sheet.steps.flatMap((step) => {
    const own = findings.filter((f) => f.step === step.id);
    const entered = bySteps.get(step.id) ?? [];
    const notes = notesFor(context, (named) => named === step.id);
    return own.length + entered.length + notes.length === 0 ? [] : [stepView(context, step, own, entered, counted, besides)];
  });
}

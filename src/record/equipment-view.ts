import { asTyped, designFor, factsOf, type Live, switchOn, type Typed, type Whats } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { LabelledText, PictureView, RecordModel } from "./model.ts";
import { photoView } from "./pictures-view.ts";
import { fill } from "./speaking.ts";

/** A figure of design or kit card as it was typed; 'unknown' is said. */
export function figureText({ texts }: Context, fact: Typed | string | undefined): string {
  if (fact === undefined || fact === "unknown") return texts("kit-unknown");
  if (typeof fact === "string") return fact;
  return asTyped(fact.typed, fact.unit);
}

/** The parts by their kit cards, with what the card notes and where its facts come from. */
export function equipmentViews(context: Context): RecordModel["equipment"] {
  const { state, sayer, texts } = context;
  return state.kitCards.map(({ part, facts, notes = "", source = "" }) => ({
    part,
    facts: [
      ...Object.entries(facts).map(([key, fact]) => ({ label: sayer.figureTitle(key), text: figureText(context, fact) })),
      ...(notes === "" ? [] : [{ label: texts("kit-notes"), text: notes }]),
      ...(source === "" ? [] : [{ label: texts("kit-source"), text: source }]),
    ],
  }));
}

/** The design as it now stands: its figures as typed, and what the job has or has not. */
export function designViews(context: Context): readonly LabelledText[] {
  const { state, sheet, sayer, texts } = context;
  if (factsOf(state, "design-set").length === 0) return [];
  const design = designFor(state, undefined);
  return [
    ...Object.entries(design.figures).map(([key, figure]) => ({ label: sayer.figureTitle(key), text: figureText(context, figure) })),
    ...sheet.switches.map(({ id, title }) => ({ label: sayer.words(title), text: texts(switchOn(sheet, design, id) ? "yes" : "no") })),
  ];
}

/** What others did and who says so; a paper that came as a PDF is named by its digest. */
function otherText({ texts, nameOf }: Context, fact: Live & { readonly what: Whats["done-by-others"] }): string {
  const { what, paper } = fact.what;
  const said = `${what} (${nameOf(fact)})`;
  return paper === undefined ? said : `${said} ${fill(texts("paper-as-pdf"), { digest: paper.slice(0, 16) })}`;
}

export function paperViews(context: Context): readonly LabelledText[] {
  const { state, texts, nameOf, sayer } = context;
  const added = factsOf(state, "paper-added").map((f) => ({ label: f.what.title, text: f.what.paper }));
  const inspected = factsOf(state, "inspected-by-authority").map((f) => ({
    label: `${texts("inspected")}: ${f.what.what}`,
    text: [
      texts(`state-${f.what.state}`),
      f.what.number,
      f.what.day,
      fill(texts("inspected-says"), { name: nameOf(f), time: sayer.moment(f.at) }),
    ]
      .filter((p) => p !== undefined)
      .join(", "),
  }));
  const others = factsOf(state, "done-by-others").map((f) => ({ label: texts("by-others"), text: otherText(context, f) }));
  return [...added, ...inspected, ...others];
}

export const paperPictures = (context: Context): readonly PictureView[] =>
  [
    ...factsOf(context.state, "paper-added").map((fact) => ({ fact, title: fact.what.title })),
    ...factsOf(context.state, "inspected-by-authority").map((fact) => ({
      fact,
      title: `${context.texts("inspected")}: ${fact.what.what}`,
    })),
    ...factsOf(context.state, "done-by-others").map((fact) => ({ fact, title: `${context.texts("by-others")}: ${fact.what.what}` })),
  ]
    .filter(({ fact }) => fact.what.photo !== undefined)
    .map(({ fact, title }) => photoView(context, fact as Live, title));

import type { HeadingKey, RecordModel } from "#core/record/index.ts";
import { type Html, html, trusted } from "../html.ts";
import {
  accepted,
  cautions,
  corrections,
  design,
  equipment,
  leftToDo,
  notes,
  others,
  papers,
  proof,
  signature,
  upkeep,
  visits,
  warranty,
} from "./back.ts";
import { contents, type Listed, type Pages } from "./contents.ts";
import { type BoundPaper, boundPages, enclosures } from "./enclosures.ts";
import { changed, coverings, exceptions, jobInNumbers, summary, titleBlock } from "./front.ts";
import type { PrintedPhoto } from "./pictures.ts";
import { partOfStep, step } from "./step.ts";
import { styleSheet } from "./style.ts";
import { type Say, sayFrom } from "./words.ts";
import { budget, compared, glueSessions, plan, section, tried } from "./worked.ts";

export interface RecordSurroundings {
  /** `@font-face` rules of the family `Record Sans`; the addresses are the printer's. */
  readonly fonts: string;
  readonly photo: PrintedPhoto;
  /** Where each part begins, once the pages are laid out. */
  readonly pages?: Pages;
  /** Of papers that are bound in; without it all are only named. */
  readonly bound?: BoundPaper;
}

/** On a page that is not printed. */
export const onlyNamed: BoundPaper = () => ({ why: "enclosure-printed" });

/** The document's title: what a reader's window and the PDF's own data say. */
export const recordTitle = (model: RecordModel): string =>
  `${model.title.record}: ${model.title.job}, ${sayFrom(model)("version")} ${model.title.version}`;

export interface Part {
  readonly id: string;
  /** Its heading, where it stands in the contents. */
  readonly title?: string;
  readonly body: Html | false;
  readonly inside?: readonly Listed[];
}

/** The parts of the record in their order; those without a body have nothing to say. */
export function partsOf(model: RecordModel, say: Say, photo: PrintedPhoto, bound: BoundPaper = onlyNamed): readonly Part[] {
  const part = (id: HeadingKey, body: Html | false): Part => ({ id, title: say(id), body });
  const steps = model.steps.map((view) => ({ id: partOfStep(view), title: `${view.number} ${view.title}`, under: true }));
  return [
    part("exceptions", exceptions(model, say)),
    { id: "since", ...(model.changed && { title: model.changed.title }), body: changed(model) },
    part("coverings", coverings(model, say)),
    part("figures", jobInNumbers(model, say)),
    part("plan", plan(model, say)),
    part("section", section(model, say)),
    {
      ...part("steps", html`<section class="steps"><h2>${say("steps")}</h2>${model.steps.map((view) => step(view, say, photo))}</section>`),
      inside: steps,
    },
    part("glue-sessions", glueSessions(model, say)),
    part("tried", tried(model, say)),
    part("accepted", accepted(model, say)),
    part("left-to-do", leftToDo(model, say)),
    part("visits", visits(model, say)),
    part("free-notes", notes(model, say)),
    part("others", others(model, say)),
    part("changed", corrections(model, say)),
    part("papers", papers(model, say, photo)),
    part("design", design(model, say)),
    part("compared", compared(model, say)),
    part("budget", budget(model, say)),
    part("equipment", equipment(model, say)),
    part("upkeep", upkeep(model, say)),
    part("warranty", warranty(model, say)),
    part("cautions", cautions(model, say)),
    part("signature", signature(model, say)),
    part("how-to-check", proof(model, say)),
    part("enclosures", enclosures(model, say, bound)),
  ];
}

/**
 * The whole record as one HTML document, ready to print: nothing in it is worked out, fetched or left to the browser's
 * zone or language. Everything that somebody typed is escaped.
 */
export const recordPage = (model: RecordModel, { fonts, photo, pages = {}, bound = onlyNamed }: RecordSurroundings): string => {
  const say = sayFrom(model);
  const there = partsOf(model, say, photo, bound).filter(({ body }) => body !== false);
  const listed = there.flatMap(({ id, title, inside = [] }) => (title === undefined ? [] : [{ id, title }, ...inside]));
  return html`<!doctype html>
<html lang="${model.language}"><head><meta charset="utf-8"><title>${recordTitle(model)}</title>
<style>${trusted(fonts)}</style><style>${trusted(styleSheet(model, say))}</style></head>
<body><main>
${titleBlock(model, say, photo)}
${summary(model, say)}
${contents(listed, pages, say("contents"))}
${there.map(({ id, body }) => html`<div id="${id}">${body}</div>`)}
${boundPages(model, say, bound)}
</main></body></html>`.text;
};

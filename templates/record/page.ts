import type { RecordModel } from "#core/record/index.ts";
import { html, trusted } from "../html.ts";
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
  visits,
  warranty,
} from "./back.ts";
import { coverings, jobInNumbers, standing, titleBlock } from "./front.ts";
import type { PrintedPhoto } from "./pictures.ts";
import { step } from "./step.ts";
import { styleSheet } from "./style.ts";
import { sayFrom } from "./words.ts";
import { budget, compared, glueSessions, plan, section, tried } from "./worked.ts";

export interface RecordSurroundings {
  /** `@font-face` rules of the family `Record Sans`; the addresses are the printer's. */
  readonly fonts: string;
  readonly photo: PrintedPhoto;
}

/** The document's title: what a reader's window and the PDF's own data say. */
export const recordTitle = (model: RecordModel): string =>
  `${model.title.record}: ${model.title.job}, ${sayFrom(model)("version")} ${model.title.version}`;

/**
 * The whole record as one HTML document, ready to print: nothing in it is worked out, fetched or left to the browser's
 * zone or language. Everything that somebody typed is escaped.
 */
export const recordPage = (model: RecordModel, { fonts, photo }: RecordSurroundings): string => {
  const say = sayFrom(model);
  return html`<!doctype html>
<html lang="${model.language}"><head><meta charset="utf-8"><title>${recordTitle(model)}</title>
<style>${trusted(fonts)}</style><style>${trusted(styleSheet(model, say))}</style></head>
<body><main>
${titleBlock(model, say)}
${standing(model, say)}
${coverings(model, say)}
${jobInNumbers(model, say)}
${plan(model, say)}
${section(model, say)}
<section class="steps"><h2>${say("steps")}</h2>
${model.steps.map((view) => step(view, say, photo))}
</section>
${glueSessions(model, say)}
${tried(model, say)}
${accepted(model, say)}
${leftToDo(model, say)}
${visits(model, say)}
${notes(model, say)}
${others(model, say)}
${corrections(model, say)}
${papers(model, say, photo)}
${design(model, say)}
${compared(model, say)}
${budget(model, say)}
${equipment(model, say)}
${warranty(model, say)}
${cautions(model, say)}
${signature(model, say)}
${proof(model, say)}
</main></body></html>`.text;
};

import type { RecordModel } from "#core/record/index.ts";
import { html, trusted } from "../html.ts";
import { drawingStyle } from "./drawing.ts";
import { summary, titleBlock } from "./front.ts";
import { measuredStyle } from "./measured.ts";
import { partsOf, recordTitle } from "./page.ts";
import type { PrintedPhoto } from "./pictures.ts";
import { prose } from "./prose.ts";
import { coloursOf, lettering } from "./style.ts";
import { tables } from "./tables.ts";
import { sayFrom } from "./words.ts";

export interface ReleasedSurroundings {
  /** Address of the printed record. */
  readonly pdf: string;
  readonly photo: PrintedPhoto;
}

/**
 * The record as one page for its receiver's phone: the same parts from the same view model as on paper, in the phone's own letters.
 * Nothing in it runs.
 */
export const releasedPage = (model: RecordModel, { pdf, photo }: ReleasedSurroundings): string => {
  const say = sayFrom(model);
  const there = partsOf(model, say, photo).filter(({ body }) => body !== false);
  return html`<!doctype html>
<html lang="${model.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">
<title>${recordTitle(model)}</title><style>${trusted(`${lettering}\n${tables}\n${drawingStyle}\n${measuredStyle}\n${coloursOf(model)}\n${onPhone}`)}</style></head>
<body><main>
${titleBlock(model, say, photo)}
<p class="whole-record"><a href="${pdf}">${say("released-pdf")}</a></p>
${summary(model, say)}
<nav aria-label="${say("contents")}"><ul class="contents-list">${there.map(
    ({ id, title }) => title !== undefined && html`<li><a href="#${id}">${prose(title)}</a></li>`,
  )}</ul></nav>
${there.map(({ id, body }) => html`<div id="${id}">${body}</div>`)}
</main></body></html>`.text;
};

// Tables become one block to a row: a phone is narrower than any of them. The first column keeps its place as the row's name.
const onPhone = `
html { font: 400 16px/1.45 system-ui, "Open Sans", sans-serif; background: var(--paper); -webkit-text-size-adjust: 100%; }
main { max-width: 60rem; margin: 0 auto; padding: 12px; }
h1 { font-size: 1.6rem; } h2 { font-size: 1.25rem; margin-top: 2rem; } h3 { font-size: 1.1rem; }
p, li, dd, td, th, figcaption, .lead, .company, ul.in-short, ul.tied-short, .upkeep ul, ul.cautions, .notes p, ul.plainly,
.findings, .left, .readings, .due, .coverings, .exceptions, .accepted, .warranty, .narrow { font-size: 1rem; line-height: 1.45; }
.lead { font-weight: 600; }
.small, .above, dt, .compartments dt, thead th { font-size: .86rem; }
.compartments .hash { font-size: .8rem; overflow-wrap: anywhere; }
a { color: inherit; display: inline-block; padding: 12px 0; min-height: 44px; }
.whole-record a { font-weight: 600; }
.contents-list { list-style: none; columns: 2 15rem; }
.kept { white-space: normal; }
.title-block { grid-template-columns: 1fr; }
.compartments.figures, .compartments.row { grid-template-columns: repeat(auto-fill, minmax(10rem, 1fr)); }
.short, .pair, .lone figure { grid-template-columns: repeat(auto-fit, minmax(16rem, 1fr)); }
ul.tied-short, .upkeep, ul.plainly, section > ul.cautions { columns: 2 18rem; }
.mount, .lone .mount { height: auto; }
.drawing { overflow-x: auto; }
@media (max-width: 44rem) {
  table, tbody, tr, th, td { display: block; width: auto; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  colgroup { display: none; }
  th, td { padding: 2px 6px; }
  tr { padding: 6px 0; }
  td:empty { display: none; }
}
`;

import type { DesignPageModel } from "#core/record/index.ts";
import { type Html, html, trusted } from "../html.ts";
import { drawing } from "../record/drawing.ts";
import { compartments } from "../record/front.ts";
import { paragraphs, prose } from "../record/prose.ts";
import { numbers } from "./numbers.ts";
import { question } from "./question.ts";
import { designStyle } from "./style.ts";

export interface DesignPageSurroundings {
  /** `@font-face` rules of the family `Record Sans`; the addresses are the printer's. */
  readonly fonts: string;
  /** How large everything is drawn, 1 as it is meant: print makes it smaller until it is one page. */
  readonly size: number;
}

const titleBlock = ({ title, company }: DesignPageModel): Html => html`<header class="title-block">
<div class="name"><p class="kind">${title.page}</p><h1>${prose(title.job)}</h1></div>
<div class="company"><p class="company-name">${company.name}</p>${company.lines.map((line) => html`<p>${prose(line)}</p>`)}</div>
${compartments(title.lines, "row")}
</header>`;

/** Questions on the left, with the curve under the first: what pump and pipe do. The rest stands on the right. */
const ON_THE_LEFT = 3;

/** The whole page as one HTML document, ready to print. Everything that somebody typed is escaped. */
export const designCheckPage = (model: DesignPageModel, { fonts, size }: DesignPageSurroundings): string => {
  const { words, title, standing, questions, drawing: view, notes, cautions, language } = model;
  const [first, ...others] = questions.map((one) => question(one, words.change));
  const left = others.splice(0, ON_THE_LEFT - 1);
  return html`<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><title>${title.document}</title>
<style>${trusted(fonts)}</style><style>${trusted(designStyle(model, size))}</style></head>
<body><main class="design-check">
${titleBlock(model)}
<p class="lead">${prose(standing)}</p>
<div class="columns">
<div>${first}<div class="curve">${view && drawing(view, "curve")}<div class="notes">${paragraphs(notes)}</div></div>${left}</div>
<div>${others}${numbers(model)}</div>
</div>
<section class="last"><h2>${words.cautions}</h2><ul class="cautions">${cautions.map((caution) => html`<li>${prose(caution)}</li>`)}</ul></section>
</main></body></html>`.text;
};

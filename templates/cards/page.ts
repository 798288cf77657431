import type { CardsPageModel, CardView, RulerMarkView } from "#core/record/index.ts";
import { type Html, html, trusted } from "../html.ts";
import { prose } from "../record/prose.ts";
import { cardsStyle } from "./style.ts";

export interface CardsSurroundings {
  /** `@font-face` rules of the family `Record Sans`; the addresses are the printer's. */
  readonly fonts: string;
  /** A code's dark modules as a path, and how many modules stand along a side; no light border. */
  readonly code: (text: string) => { readonly path: string; readonly modules: number };
}

const mark = ({ side, at, long, label }: RulerMarkView): Html => {
  const to = side === "left" ? -long : long;
  const words =
    label !== "" &&
    html`<text x="${side === "left" ? -4.6 : 4.6}" y="${at}" text-anchor="${side === "left" ? "end" : "start"}">${label}</text>`;
  return html`<path d="M0 ${at}H${to}"/>${words}`;
};

const ruler = ({ ruler: { x, y, length, marks } }: CardsPageModel): Html =>
  html`<g class="ruler" transform="translate(${x} ${y})"><path d="M0 0V${length}"/>${marks.map(mark)}</g>`;

const card = (model: CardsPageModel, { codes, step, title, mark: large }: CardView, code: CardsSurroundings["code"]): Html => {
  const { width, height, words, company, title: of, how } = model;
  const drawn = codes.map(({ text, x, y, side }) => {
    const { path, modules } = code(text);
    return html`<svg x="${x}" y="${y}" width="${side}" height="${side}" viewBox="0 0 ${modules} ${modules}"><path d="${path}"/></svg>`;
  });
  return html`<section class="card">
<svg class="whole-card" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${words.codes}">${drawn}${ruler(model)}</svg>
${large !== "" && html`<p class="large" aria-hidden="true">${large}</p>`}
<div class="said"><p class="kind">${words.kind} · ${prose(company)}</p>
<h1>${prose(of.job)}</h1>${of.ownNumber !== undefined && html`<p class="own-number">${prose(of.ownNumber)}</p>`}
<h2>${step}${title !== "" && html`<br>${prose(title)}`}</h2>
<ol>${how.map((text) => html`<li>${prose(text)}</li>`)}</ol></div>
</section>`;
};

/** All cards as one HTML document, a page each, ready to print. Everything that somebody typed is escaped. */
export const cardsPages = (model: CardsPageModel, { fonts, code }: CardsSurroundings): string => {
  const { language, title, cards } = model;
  return html`<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><title>${title.document}</title>
<style>${trusted(fonts)}</style><style>${trusted(cardsStyle(model))}</style></head>
<body><main>${cards.map((one) => card(model, one, code))}</main></body></html>`.text;
};

import type { HeadingKey, RecordModel } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { BOUND_NAME_MM } from "./paper.ts";
import { prose } from "./prose.ts";
import type { Say } from "./words.ts";

/** Where a paper is bound in, or the word that says why it is only listed. */
export type BoundPaper = (paper: string) => { readonly from: number; readonly pages: number } | { readonly why: HeadingKey };

/** The sheet that names every paper, and where it is. Nothing may come behind it but the papers. */
export const enclosures = ({ enclosures: views = [] }: RecordModel, say: Say, bound: BoundPaper): Html | false =>
  views.length > 0 &&
  html`<section class="enclosures"><h2>${say("enclosures")}</h2><p>${prose(say("enclosures-how"))}</p>
<table class="left"><colgroup><col class="entry"><col><col class="half"><col class="when"></colgroup><thead><tr><th scope="col">${say("enclosure")}</th><th scope="col">${say("what")}</th><th scope="col">${say("enclosure-kind")}</th><th scope="col">${say("page")}</th></tr></thead>
<tbody>${views.map(({ paper, title, says }, at) => {
    const place = bound(paper);
    const last = "why" in place ? 0 : place.from + place.pages - 1;
    return html`<tr><td>${at + 1}</td><th scope="row">${prose(title)}</th><td>${prose(says)}</td><td>${
      "why" in place ? prose(say(place.why)) : html`<span class="kept">${place.from}${last > place.from && html`–${last}`}</span>`
    }</td></tr>`;
  })}</tbody></table></section>`;

/** An empty page for each page of a paper, with its name: print draws the paper onto it. */
export const boundPages = ({ enclosures: views = [] }: RecordModel, say: Say, bound: BoundPaper): Html =>
  html`${views.map(({ paper, title }, at) => {
    const place = bound(paper);
    if ("why" in place) return false;
    const name = `${say("enclosure")} ${at + 1}: ${title}`;
    return Array.from({ length: place.pages }, (_, page) =>
      page === 0
        ? html`<div class="bound-page"><h3>${prose(name)}</h3></div>`
        : html`<div class="bound-page"><p>${say("enclosure")} ${at + 1}, ${say("page")} ${page + 1} ${say("of-pages")} ${place.pages}</p></div>`,
    );
  })}`;

export const enclosuresStyle = `
.enclosures { break-before: page; }
.enclosures h2 { margin-top: 0; }
.enclosures p { margin-bottom: 2.5mm; }
.bound-page { break-before: page; break-inside: avoid; height: ${BOUND_NAME_MM - 1}mm; overflow: hidden; }
.bound-page h3 { margin: 0; font-size: 9pt; line-height: 1.2; }
`;

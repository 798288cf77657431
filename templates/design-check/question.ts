import type { DesignFigureView, DesignQuestionView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { prose } from "../record/prose.ts";
import { verdictMark } from "../record/tone.ts";

const figure = ({ title, value, most }: DesignFigureView): Html =>
  html`<div><dt>${prose(title)}</dt><dd>${prose(value)}</dd>${most !== "" && html`<dd class="most">${prose(most)}</dd>`}</div>`;

const changed = (changes: readonly string[], change: string): Html | false =>
  changes.length > 0 && html`<div class="change"><p>${change}</p><ul>${changes.map((text) => html`<li>${prose(text)}</li>`)}</ul></div>`;

/** One question and what it comes to; the answer, what to change, what is missing by name; its figures. */
export const question = (view: DesignQuestionView, change: string): Html =>
  html`<section class="question ${view.tone}"><h2><span class="balloon">${view.number}</span> <span>${prose(view.question)}</span></h2>
<p class="answer">${verdictMark(view.tone, view.state)} ${prose(view.says)}</p>${changed(view.changes, change)}
${view.missing !== "" && html`<p class="missing-by-name">${prose(view.missing)}</p>`}
${view.figures.length > 0 && html`<dl class="turns-on">${view.figures.map(figure)}</dl>`}
${view.beside.map((text) => html`<p class="small">${prose(text)}</p>`)}</section>`;

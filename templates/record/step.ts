import type { StepView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { findingsList, findingsTable } from "./findings.ts";
import { type PrintedPhoto, pictures } from "./pictures.ts";
import { paragraphs, prose } from "./prose.ts";
import { readings } from "./readings.ts";
import type { Say } from "./words.ts";

/** Where a step is found on the page. */
export const partOfStep = ({ number }: StepView): string => `step-${number}`;

/** Everything of one step: cautions first, since who opens this ground again reads them first. */
export const step = (view: StepView, say: Say, photo: PrintedPhoto): Html => html`<section class="step" id="${partOfStep(view)}">
<h3><span class="balloon">${view.number}</span> ${prose(view.title)}</h3>
${view.cautions.length > 0 && html`<ul class="cautions">${view.cautions.map((caution) => html`<li><b>${say("caution")}:</b> ${prose(caution)}</li>`)}</ul>`}
${view.explains.length > 0 && html`<div class="notes"><p class="above">${say("explained")}</p>${paragraphs(view.explains)}</div>`}
${findingsTable(
  view.findings.filter(({ shown }) => shown === "table"),
  say,
)}
${readings(view.readings, say)}
${findingsList(
  view.findings.filter(({ shown }) => shown === "list"),
  say,
)}
${view.notes.length > 0 && html`<div class="notes"><p class="above">${say("notes")}</p>${paragraphs(view.notes)}</div>`}
${pictures(view.pictures, say, photo)}
</section>`;

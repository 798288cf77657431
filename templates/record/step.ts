import type { FindingView, ReadingView, StepView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { type PrintedPhoto, pictures } from "./pictures.ts";
import { paragraphs, prose, tagged } from "./prose.ts";
import { verdictMark } from "./tone.ts";
import type { Say } from "./words.ts";

/** Everything of one step: cautions first, since who opens this ground again reads them first. */
export const step = (view: StepView, say: Say, photo: PrintedPhoto): Html => html`<section class="step">
<h3><span class="balloon">${view.number}</span> ${prose(view.title)}</h3>
${view.cautions.length > 0 && html`<ul class="cautions">${view.cautions.map((caution) => html`<li><b>${say("caution")}:</b> ${prose(caution)}</li>`)}</ul>`}
${view.findings.length > 0 && findings(view.findings, say)}
${view.readings.length > 0 && readings(view.readings, say)}
${view.notes.length > 0 && html`<div class="notes"><p class="above">${say("notes")}</p>${paragraphs(view.notes)}</div>`}
${pictures(view.pictures, say, photo)}
</section>`;

const hasFigures = ({ value, aim, limit }: FindingView): boolean => value !== undefined || aim !== undefined || limit !== undefined;

const findings = (views: readonly FindingView[], say: Say): Html => {
  const measured = views.some(hasFigures);
  return html`<table class="findings">
<colgroup><col class="verdict"><col>${measured && html`<col class="value"><col class="aim"><col class="limit">`}</colgroup>
<thead><tr><th scope="col">${say("verdict")}</th><th scope="col">${say("findings")}</th>${
    measured && html`<th scope="col">${say("value")}</th><th scope="col">${say("aim")}</th><th scope="col">${say("limit")}</th>`
  }</tr></thead>
${views.map((view) => finding(view, say, measured ? 4 : 1))}</table>`;
};

const finding = (view: FindingView, say: Say, columns: number): Html =>
  hasFigures(view) ? measuredFinding(view, say, columns) : plainFinding(view, say, columns);

/** Nothing was measured: a sentence that begins with the title says it all. */
const plainFinding = (
  view: FindingView,
  say: Say,
  columns: number,
): Html => html`<tbody><tr class="${view.tone}"><td class="verdict">${verdictMark(view.tone, view.verdictWord)}</td>
<th scope="row" class="sentence" colspan="${columns}">${
  !view.says.startsWith(view.title) && html`<p><b>${tagged(view.title, view.tag)}</b></p>`
}<p>${prose(view.says)}</p>${origin(view, say)}</th></tr></tbody>`;

const measuredFinding = (
  view: FindingView,
  say: Say,
  columns: number,
): Html => html`<tbody><tr class="${view.tone}"><td class="verdict">${verdictMark(view.tone, view.verdictWord)}</td>
<th scope="row">${tagged(view.title, view.tag)}</th>${figures(view)}</tr>
<tr class="says"><td></td><td colspan="${columns}"><p>${prose(view.says)}</p>${origin(view, say)}</td></tr></tbody>`;

const origin = (view: FindingView, say: Say): Html | false =>
  small([
    view.source === undefined ? undefined : html`${say("limit-source")}: ${prose(view.source)}`,
    view.entries.length > 0 && html`${say("entries")}: ${view.entries.join(", ")}`,
  ]);

const figures = ({ value, doubt, aim, limit }: FindingView): Html =>
  html`<td class="figure">${value !== undefined && html`<span class="kept">${value}</span>`}${
    doubt !== undefined && html` <span class="kept">${plusMinus(doubt)}</span>`
  }</td><td class="figure">${aim !== undefined && prose(aim)}</td><td class="figure">${limit !== undefined && prose(limit)}</td>`;

const plusMinus = (doubt: string): string => (doubt.startsWith("±") ? doubt : `± ${doubt}`);

const readings = (views: readonly ReadingView[], say: Say): Html => html`<table class="readings">
<colgroup><col><col class="typed"><col class="how"><col class="when"><col class="entry"></colgroup>
<thead><tr><th scope="col">${say("reading")}</th><th scope="col">${say("as-typed")}</th><th scope="col">${say("how-read")}</th><th scope="col">${say("when")}</th><th scope="col">${say("entry")}</th></tr></thead>
<tbody>${views.map(reading)}</tbody></table>`;

const reading = ({
  title,
  tag,
  typed,
  how,
  when,
  number,
  aside,
}: ReadingView): Html => html`<tr${aside !== undefined && html` class="aside"`}>
<th scope="row">${tagged(title, tag)}</th><td class="figure">${prose(typed)}</td><td>${prose(how)}${aside !== undefined && html`<br><b>${prose(aside)}</b>`}</td>
<td>${prose(when)}</td><td class="figure">${number}</td></tr>`;

const small = (pieces: readonly (Html | undefined | false)[]): Html | false => {
  const said = pieces.filter((piece) => piece !== undefined && piece !== false);
  return said.length > 0 && html`<p class="small">${said.map((piece, at) => html`${at > 0 && " · "}${piece}`)}</p>`;
};

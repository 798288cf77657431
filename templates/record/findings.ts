import type { FindingView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { prose, tagged } from "./prose.ts";
import { verdictMark } from "./tone.ts";
import type { Say } from "./words.ts";

/** What was measured, and whatever is not as asked: one row each, sentence and figures side by side. */
export const findingsTable = (views: readonly FindingView[], say: Say): Html | false => {
  if (views.length === 0) return false;
  const measured = views.some(hasFigures);
  return html`<table class="findings">
<colgroup><col class="verdict"><col>${measured && html`<col class="value"><col class="aim"><col class="limit">`}</colgroup>
<thead><tr><th scope="col">${say("verdict")}</th><th scope="col">${say("findings")}</th>${
    measured && html`<th scope="col">${say("value")}</th><th scope="col">${say("aim")}</th><th scope="col">${say("limit")}</th>`
  }</tr></thead>
<tbody>${views.map((view) => row(view, say, measured))}</tbody></table>`;
};

/** What was taken and is as asked, in two columns: there is nothing to compare. */
export const findingsList = (views: readonly FindingView[], say: Say): Html | false =>
  views.length > 0 &&
  html`<p class="above">${say("plainly")}</p><ul class="plainly">${views.map(
    (view) => html`<li>${verdictMark(view.tone, view.verdictWord)} ${sentence(view, say)}</li>`,
  )}</ul>`;

const hasFigures = ({ value, aim, limit }: FindingView): boolean => value !== undefined || aim !== undefined || limit !== undefined;

const row = (
  view: FindingView,
  say: Say,
  measured: boolean,
): Html => html`<tr class="${view.tone}"><td class="verdict">${verdictMark(view.tone, view.verdictWord)}</td>
<th scope="row" class="sentence"${measured && !hasFigures(view) && html` colspan="4"`}>${sentence(view, say)}</th>${
  measured && hasFigures(view) && figures(view)
}</tr>`;

/** The sentence that begins with the title says it all; where it does not, the title stands before it. */
const sentence = (view: FindingView, say: Say): Html =>
  html`${!view.says.startsWith(view.title) && html`<b>${tagged(view.title, view.tag)}</b> `}${prose(view.says)}${origin(view, say)}`;

const origin = (view: FindingView, say: Say): Html | false => {
  const pieces = [
    view.source === undefined ? undefined : html`${say("limit-source")}: ${prose(view.source)}`,
    view.entries.length > 0 && html`${say("entries")}: ${view.entries.join(", ")}`,
  ].filter((piece) => piece !== undefined && piece !== false);
  return pieces.length > 0 && html` <span class="small">${pieces.map((piece, at) => html`${at > 0 && " · "}${piece}`)}</span>`;
};

const figures = ({ value, doubt, aim, limit }: FindingView): Html =>
  html`<td class="figure">${value !== undefined && html`<span class="kept">${value}</span>`}${
    doubt !== undefined && html` <span class="kept">${plusMinus(doubt)}</span>`
  }</td><td class="figure">${aim !== undefined && prose(aim)}</td><td class="figure">${limit !== undefined && prose(limit)}</td>`;

const plusMinus = (doubt: string): string => (doubt.startsWith("±") ? doubt : `± ${doubt}`);

import type { ReadingView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { prose } from "./prose.ts";
import type { Say } from "./words.ts";

/** Readings as they were typed; those of one set-up stand under its line. */
export const readings = (views: readonly ReadingView[], say: Say): Html | false =>
  views.length > 0 &&
  html`<table class="readings">
<colgroup><col><col class="typed"><col class="how"><col class="when"><col class="entry"></colgroup>
<thead><tr><th scope="col">${say("reading")}</th><th scope="col">${say("as-typed")}</th><th scope="col">${say("how-read")}</th><th scope="col">${say("when")}</th><th scope="col">${say("entry")}</th></tr></thead>
<tbody>${views.map((view, at) => html`${setUp(view, views[at - 1])}${reading(view)}`)}</tbody></table>`;

const setUp = (view: ReadingView, before: ReadingView | undefined): Html | false =>
  view.setUp !== undefined &&
  view.setUp !== before?.setUp &&
  html`<tr class="set-up"><th scope="rowgroup" colspan="5">${prose(view.setUp)}</th></tr>`;

const reading = ({ title, typed, how, when, number, setUp: under, corrected, aside, inPhoto }: ReadingView): Html =>
  html`<tr class="${aside !== undefined && "aside"}${under !== undefined && " under"}">
<th scope="row">${prose(title)}</th><td class="figure">${prose(typed)}</td><td>${prose(how)}${[corrected, aside].map(
    (said) => said !== undefined && html`${how !== "" && "; "}<b>${prose(said)}</b>`,
  )}${inPhoto !== undefined && html`<p>${prose(inPhoto)}</p>`}</td>
<td>${prose(when)}</td><td class="figure">${number}</td></tr>`;

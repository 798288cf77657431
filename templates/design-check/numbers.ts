import type { DesignPageModel, LabelledText, NumbersUsedView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { prose } from "../record/prose.ts";

const number = ({ label, text }: LabelledText): Html => html`<tr><th scope="row">${prose(label)}</th><td>${prose(text)}</td></tr>`;

const group = ({ from, source, numbers: all }: NumbersUsedView): Html =>
  html`<tbody><tr class="from"><th scope="rowgroup" colspan="2">${prose(from)}${source !== "" && html` <span class="source">${prose(source)}</span>`}</th></tr>${all.map(number)}</tbody>`;

/** The numbers that the answers rest on, under the place that each came from. */
export const numbers = ({ numbers: groups, words }: DesignPageModel): Html | false =>
  groups.length > 0 && html`<section class="numbers"><h2>${words.numbers}</h2><table class="used">${groups.map(group)}</table></section>`;

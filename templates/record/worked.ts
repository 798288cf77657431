import type { BudgetView, ComparedView, GlueSessionView, RecordModel, TiedView, TriedView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { drawing } from "./drawing.ts";
import { paragraphs, parts, prose } from "./prose.ts";
import type { Say } from "./words.ts";

const tied = ({ sign, name, ties, place }: TiedView): Html =>
  html`<tr><td class="figure">${prose(sign)}</td><th scope="row">${prose(name)}</th><td>${parts(ties)}</td><td>${prose(place)}</td></tr>`;

export const plan = ({ plan: view }: RecordModel, say: Say): Html | false =>
  view !== undefined &&
  html`<section><h2>${say("plan")}</h2>${view.drawing && drawing(view.drawing, "plan")}
<table class="left tied"><colgroup><col class="entry"><col><col><col class="covered"></colgroup><thead><tr><th scope="col"></th><th scope="col">${say("tied")}</th><th scope="col">${say("tied-by")}</th><th scope="col">${say("tied-place")}</th></tr></thead>
<tbody>${view.tied.map(tied)}</tbody></table>${paragraphs(view.notes)}</section>`;

export const section = ({ section: view }: RecordModel, say: Say): Html | false =>
  view !== undefined &&
  html`<section class="whole"><h2>${say("section")}</h2>${drawing(view.drawing, "section")}${paragraphs(view.notes)}</section>`;

const compare = ({ title, expected, measured, difference }: ComparedView): Html =>
  html`<tr><th scope="row">${prose(title)}</th><td class="figure">${prose(expected)}</td><td class="figure">${prose(measured)}</td><td class="figure">${prose(difference)}</td></tr>`;

export const compared = (model: RecordModel, say: Say): Html | false =>
  model.compared.length > 0 &&
  html`<section><h2>${say("compared")}</h2><table class="left"><colgroup><col><col class="when"><col class="when"><col class="people"></colgroup><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("expected")}</th><th scope="col">${say("measured")}</th><th scope="col">${say("difference")}</th></tr></thead>
<tbody>${model.compared.map(compare)}</tbody></table></section>`;

const amount = ({ title, value, most, beside }: BudgetView): Html =>
  html`<tr><th scope="row">${prose(title)}</th><td class="figure">${prose(value)}</td><td>${prose(most)}</td><td>${prose(beside)}</td></tr>`;

export const budget = ({ budget: view }: RecordModel, say: Say): Html | false =>
  view !== undefined &&
  html`<section><h2>${say("budget")}</h2><table class="left"><colgroup><col><col class="people"><col class="people"><col class="people"></colgroup><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("amount")}</th><th scope="col">${say("most-doubt")}</th><th scope="col">${say("said-beside")}</th></tr></thead>
<tbody>${view.lines.map(amount)}</tbody></table><div class="notes">${paragraphs(view.notes)}</div></section>`;

const session = ({ session: name, pipe, coldest, lastJoint, setUntil, cureUntil, dryAt, by }: GlueSessionView): Html =>
  html`<tr><th scope="row">${prose(name)}</th><td>${prose(pipe)}</td><td class="figure">${prose(coldest)}</td><td>${prose(lastJoint)}</td><td>${prose(setUntil)}</td><td>${prose(cureUntil)}</td><td>${prose(dryAt)}</td><td>${prose(by)}</td></tr>`;

export const glueSessions = (model: RecordModel, say: Say): Html | false =>
  model.glueSessions.length > 0 &&
  html`<section><h2>${say("glue-sessions")}</h2><table class="left narrow"><colgroup><col class="session"><col><col class="entry"><col><col><col><col><col></colgroup><thead><tr><th scope="col">${say("session")}</th><th scope="col">${say("pipe")}</th><th scope="col">${say("coldest")}</th><th scope="col">${say("last-joint")}</th><th scope="col">${say("set-until")}</th><th scope="col">${say("cure-until")}</th><th scope="col">${say("dry-at")}</th><th scope="col">${say("times-by")}</th></tr></thead>
<tbody>${model.glueSessions.map(session)}</tbody></table></section>`;

const test = ({ title, readings, value, limit, says }: TriedView): Html =>
  html`<tbody><tr><th scope="row">${prose(title)}</th><td>${prose(readings)}</td><td class="figure">${prose(value)}</td><td class="figure">${prose(limit)}</td></tr>
<tr class="says"><td colspan="4"><p>${prose(says)}</p></td></tr></tbody>`;

export const tried = (model: RecordModel, say: Say): Html | false =>
  model.tried.length > 0 &&
  html`<section><h2>${say("tried")}</h2><table class="left"><colgroup><col class="people"><col><col class="when"><col class="when"></colgroup><thead><tr><th scope="col">${say("tried-what")}</th><th scope="col">${say("tried-readings")}</th><th scope="col">${say("value")}</th><th scope="col">${say("limit")}</th></tr></thead>
${model.tried.map(test)}</table></section>`;

import type { DecisionView, RecordModel, VisitView, WarrantyTermView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { compartments } from "./front.ts";
import { type PrintedPhoto, pictures } from "./pictures.ts";
import { paragraphs, prose } from "./prose.ts";
import type { Say } from "./words.ts";

const decision = ({
  title,
  kind,
  says,
  by,
  when,
}: DecisionView): Html => html`<tbody><tr><th scope="row">${prose(title)}</th><td>${prose(kind)}</td><td>${prose(by)}</td><td>${prose(when)}</td></tr>
<tr class="says"><td colspan="4"><p>${prose(says)}</p></td></tr></tbody>`;

export const accepted = (model: RecordModel, say: Say): Html =>
  html`<section><h2>${say("accepted")}</h2>${
    model.accepted.length === 0
      ? html`<p>${prose(say("accepted-none"))}</p>`
      : html`<table class="accepted"><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("kind")}</th><th scope="col">${say("accepted-by")}</th><th scope="col">${say("when")}</th></tr></thead>
${model.accepted.map(decision)}</table>`
  }</section>`;

export const leftToDo = (model: RecordModel, say: Say): Html =>
  html`<section><h2>${say("left-to-do")}</h2>${
    model.leftToDo.length === 0
      ? html`<p>${prose(say("left-to-do-none"))}</p>`
      : html`<table class="left"><colgroup><col class="half"><col><col></colgroup><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("left-to-do-by")}</th><th scope="col">${say("state")}</th></tr></thead>
<tbody>${model.leftToDo.map(({ text, by, state }) => html`<tr><th scope="row">${prose(text)}</th><td>${prose(by)}</td><td>${prose(state)}</td></tr>`)}</tbody></table>`
  }</section>`;

const visit = ({ begun, ended, people, says }: VisitView): Html =>
  html`<tr><th scope="row">${prose(begun)}</th><td>${prose(ended)}</td><td>${prose(people)}</td><td>${prose(says)}</td></tr>`;

export const visits = (model: RecordModel, say: Say): Html | false =>
  model.visits.length > 0 &&
  html`<section><h2>${say("visits")}</h2><table class="left"><colgroup><col class="when"><col class="when"><col class="people"><col></colgroup><thead><tr><th scope="col">${say("visit-begun")}</th><th scope="col">${say("visit-ended")}</th><th scope="col">${say("people")}</th><th scope="col">${say("notes")}</th></tr></thead>
<tbody>${model.visits.map(visit)}</tbody></table></section>`;

export const notes = (model: RecordModel, say: Say): Html | false =>
  model.notes.length > 0 && html`<section><h2>${say("free-notes")}</h2>${paragraphs(model.notes)}</section>`;

export const others = (model: RecordModel, say: Say): Html | false =>
  model.others.length > 0 &&
  html`<section><h2>${say("others")}</h2><table class="left"><colgroup><col><col class="people"><col class="when"><col class="entry"></colgroup><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("accepted-by")}</th><th scope="col">${say("when")}</th><th scope="col">${say("entry")}</th></tr></thead>
<tbody>${model.others.map(({ text, by, when, number }) => html`<tr><th scope="row">${prose(text)}</th><td>${prose(by)}</td><td>${prose(when)}</td><td>${number}</td></tr>`)}</tbody></table></section>`;

export const corrections = (model: RecordModel, say: Say): Html | false =>
  model.corrections.length > 0 &&
  html`<section><h2>${say("changed")}</h2><table class="left"><colgroup><col><col class="when"><col><col class="when"><col class="entry"></colgroup><thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("first-entered")}</th><th scope="col">${say("changed-to")}</th><th scope="col">${say("when")}</th><th scope="col">${say("entry")}</th></tr></thead>
<tbody>${model.corrections.map(({ title, was, became, when, number }) => html`<tr><th scope="row">${prose(title)}</th><td>${prose(was)}</td><td>${prose(became)}</td><td>${prose(when)}</td><td>${number}</td></tr>`)}</tbody></table></section>`;

export const papers = (model: RecordModel, say: Say, photo: PrintedPhoto): Html | false =>
  model.papers.length + model.paperPictures.length > 0 &&
  html`<section><h2>${say("papers")}</h2>${model.papers.length > 0 && compartments(model.papers, "row")}${pictures(model.paperPictures, say, photo)}</section>`;

export const equipment = (model: RecordModel, say: Say): Html | false =>
  model.equipment.length > 0 &&
  html`<section><h2>${say("equipment")}</h2>${model.equipment.map(
    ({ part, facts }) => html`<div class="part"><h3>${prose(part)}</h3>${compartments(facts, "figures")}</div>`,
  )}</section>`;

export const design = (model: RecordModel, say: Say): Html | false =>
  model.design.length > 0 && html`<section><h2>${say("design")}</h2>${compartments(model.design, "figures")}</section>`;

const term = ({ part, lasts, starts, ends, conditions }: WarrantyTermView): Html =>
  html`<tr><th scope="row">${prose(part)}</th><td>${prose(lasts)}</td><td>${prose(starts)}</td><td>${prose(ends)}</td><td>${prose(conditions)}</td></tr>`;

export const warranty = (model: RecordModel, say: Say): Html => html`<section><h2>${say("warranty")}</h2>
${
  model.warranty.terms.length > 0 &&
  html`<table class="warranty"><colgroup><col><col><col><col><col class="half"></colgroup><thead><tr><th scope="col">${say("part")}</th><th scope="col">${say("lasts")}</th><th scope="col">${say("starts")}</th><th scope="col">${say("ends")}</th><th scope="col">${say("conditions")}</th></tr></thead>
<tbody>${model.warranty.terms.map(term)}</tbody></table>`
}
${paragraphs(model.warranty.text)}${model.warranty.note !== "" && html`<p class="small">${prose(model.warranty.note)}</p>`}</section>`;

export const upkeep = ({ upkeep: view }: RecordModel, say: Say): Html | false =>
  view !== undefined &&
  html`<section><h2>${say("upkeep")}</h2><div class="upkeep">${view.parts.map(
    ({ title, lines }) =>
      html`<div><p class="above">${prose(title)}</p><ul>${lines.map((line) => html`<li>${prose(line)}</li>`)}</ul></div>`,
  )}</div><p class="small">${prose(view.note)}</p></section>`;

export const cautions = (model: RecordModel, say: Say): Html | false =>
  model.cautions.length > 0 &&
  html`<section><h2>${say("cautions")}</h2><ul class="cautions">${model.cautions.map((caution) => html`<li>${prose(caution)}</li>`)}</ul></section>`;

export const signature = (model: RecordModel, say: Say): Html =>
  html`<section class="whole"><h2>${say("signature")}</h2>${compartments(model.signature, "row")}</section>`;

export const proof = (
  { proof: { head, entries, rules, key, sheet, how, withheld } }: RecordModel,
  say: Say,
): Html => html`<section class="whole"><h2>${say("how-to-check")}</h2>
${compartments(
  [
    { label: say("entries"), text: String(entries) },
    { label: say("rules"), text: String(rules) },
    { label: say("tolerance-sheet"), text: sheet },
  ],
  "row",
)}
<dl class="compartments head"><div><dt>${say("head")}</dt><dd class="hash">${head}</dd></div>${
  key !== undefined && html`<div><dt>${say("seal-key")}</dt><dd class="hash">${key}</dd></div>`
}</dl>
${paragraphs(how)}${withheld !== "" && html`<p><b>${say("withheld")}:</b> ${prose(withheld)}</p>`}</section>`;

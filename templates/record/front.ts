import type { CoveringView, DueView, ExceptionView, LabelledText, RecordModel } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import type { PrintedPhoto } from "./pictures.ts";
import { paragraphs, parts, prose } from "./prose.ts";
import { verdictMark } from "./tone.ts";
import type { Say } from "./words.ts";

const cell = ({ label, text }: LabelledText): Html => html`<div><dt>${label}</dt><dd>${prose(text)}</dd></div>`;

/** A list of labelled texts, drawn as the compartments of a title block. */
export const compartments = (texts: readonly LabelledText[], kind = ""): Html =>
  html`<dl class="compartments ${kind}">${texts.map(cell)}</dl>`;

/** Beside the company's name, which says whose it is; nothing where the file of it did not come. */
const mark = ({ company }: RecordModel, photo: PrintedPhoto): Html | false => {
  const printed = company.mark && photo(company.mark);
  return (
    printed !== undefined && "address" in printed && html`<p class="company-mark"><img src="${printed.address}" alt="${company.name}"></p>`
  );
};

export const titleBlock = (model: RecordModel, say: Say, photo: PrintedPhoto): Html => {
  const { title, company } = model;
  const numbers: LabelledText[] = [
    ...(title.ownNumber === undefined ? [] : [{ label: say("job-number"), text: title.ownNumber }]),
    { label: say("version"), text: String(title.version) },
    { label: say("issued"), text: title.issued },
  ];
  return html`<header class="title-block">
<div class="name"><p class="kind">${title.record}</p><h1>${prose(title.job)}</h1></div>
${compartments(numbers, "column")}
${compartments(title.lines, "row")}
<div class="company">${mark(model, photo)}<div class="company-lines"><p class="company-name">${company.name}</p>${company.lines.map((line) => html`<p>${prose(line)}</p>`)}</div></div>
</header>`;
};

const exception = ({
  title,
  verdictWord,
  tone,
  says,
}: ExceptionView): Html => html`<tbody><tr class="${tone}"><td class="verdict">${verdictMark(tone, verdictWord)}</td>
<th scope="row" class="sentence">${!says.startsWith(title) && html`<p><b>${prose(title)}</b></p>`}<p>${prose(says)}</p></th></tr></tbody>`;

/** In short, on the first page: a line each for what is to be read first, for coverings, and for what lies buried. */
export const summary = (model: RecordModel, say: Say): Html => html`<section class="standing"><h2>${say("standing")}</h2>
<p class="lead">${prose(model.standing)}</p>
<div class="short"><div><p class="above">${say("exceptions")}</p>
${model.exceptions.length === 0 ? html`<p>${prose(say("exceptions-none"))}</p>` : short(model.exceptions, ({ verdictWord }) => verdictWord)}</div>
<div><p class="above">${say("coverings")}</p>${short(model.coverings, ({ state }) => state)}</div></div>
${built(model.summary, say)}${buried(model.summary, say)}
</section>`;

const short = <T extends Pick<CoveringView, "title" | "tone">>(views: readonly T[], word: (view: T) => string): Html =>
  html`<ul class="in-short">${views.map((view) => html`<li>${verdictMark(view.tone, word(view))} ${prose(view.title)}</li>`)}</ul>`;

const built = ({ built: lines }: RecordModel["summary"], say: Say): Html | false =>
  lines.length > 0 && html`<p class="above">${say("built")}</p>${compartments(lines, "row")}`;

const buried = ({ buried: points, marks }: RecordModel["summary"], say: Say): Html =>
  html`<p class="above">${say("buried")}</p>${
    points.length === 0
      ? html`<p>${prose(say("buried-none"))}</p>`
      : html`<ul class="tied-short">${points.map(({ sign, name, ties }) => html`<li><b>${sign}</b> ${prose(name)}: ${parts(ties)}</li>`)}</ul>
<p class="small"><b>${say("buried-from")}</b> ${prose(marks)}</p>`
  }`;

/** Every exception in full. */
export const exceptions = (model: RecordModel, say: Say): Html => html`<section><h2>${say("exceptions")}</h2>
${
  model.exceptions.length === 0
    ? html`<p>${prose(say("exceptions-none"))}</p>`
    : html`<table class="exceptions"><colgroup><col class="wide-verdict"><col></colgroup>
<thead><tr><th scope="col">${say("verdict")}</th><th scope="col">${say("what")}</th></tr></thead>${model.exceptions.map(exception)}</table>`
}
</section>`;

/** What is otherwise than in the version before. */
export const changed = ({ changed: view }: RecordModel): Html | false =>
  view !== undefined &&
  html`<section><h2>${prose(view.title)}</h2>${paragraphs(view.says)}${
    view.none === undefined
      ? html`<ul>${view.lines.map(({ label, text }) => html`<li><b>${prose(label)}:</b> ${prose(text)}</li>`)}</ul>`
      : paragraphs([view.none])
  }</section>`;

export const jobInNumbers = (model: RecordModel, say: Say): Html =>
  html`<section class="whole"><h2>${say("figures")}</h2>${compartments(model.numbers, "figures")}</section>`;

const covering = ({ title, state, tone, when, clearance, lines }: CoveringView): Html => html`<tbody><tr class="${tone}">
<th scope="row">${prose(title)}</th><td class="verdict">${verdictMark(tone, state)}</td><td>${prose(when)}</td><td>${prose(clearance)}</td></tr>${
  lines.length > 0 && html`<tr class="says"><td></td><td colspan="3">${paragraphs(lines)}</td></tr>`
}</tbody>`;

const due = ({ title, state, tone, lines }: DueView): Html =>
  html`<tr class="${tone}"><th scope="row">${prose(title)}</th><td class="verdict">${verdictMark(tone, state)}</td><td>${prose(lines.join("; "))}</td></tr>`;

export const coverings = (model: RecordModel, say: Say): Html => html`<section><h2>${say("coverings")}</h2>
<table class="coverings"><colgroup><col class="covering"><col class="wide-verdict"><col class="covered"><col></colgroup>
<thead><tr><th scope="col">${say("covering")}</th><th scope="col">${say("state")}</th><th scope="col">${say("covered-when")}</th><th scope="col">${say("clearance")}</th></tr></thead>
${model.coverings.map(covering)}</table>
${
  model.due.length > 0 &&
  html`<p class="above">${say("due")}</p><table class="due"><colgroup><col class="covering"><col class="wide-verdict"><col></colgroup>
<thead><tr><th scope="col">${say("what")}</th><th scope="col">${say("state")}</th><th scope="col">${say("still-missing")}</th></tr></thead><tbody>${model.due.map(due)}</tbody></table>`
}</section>`;

import { type AnswerView, type PictureView, type ReportModel, SIGN_BOX, signDrawn, type TableView } from "#core/quality/index.ts";
import { type Html, html, trusted } from "../html.ts";
import { prose } from "../record/prose.ts";
import { reportStyle } from "./style.ts";

export interface ReportSurroundings {
  /** `@font-face` rules of the family `Record Sans`; the addresses are the printer's. */
  readonly fonts: string;
  /** A picture as SVG, drawn by the printer. */
  readonly picture: (view: PictureView) => string;
}

const titleBlock = ({ title, company }: ReportModel): Html => html`<header class="title-block">
<div class="name"><p class="kind">${title.month}</p><h1>${title.page}</h1></div>
<div class="company"><p class="company-name">${company.name}</p>${company.lines.map((line) => html`<p>${prose(line)}</p>`)}</div>
</header>`;

const sign = (key: PictureView["key"][number]): Html => {
  const { path, filled, dash } = signDrawn(key.sign, key.filled);
  return html`<li><svg aria-hidden="true" width="${SIGN_BOX.width}" height="${SIGN_BOX.height}" viewBox="0 0 ${SIGN_BOX.width} ${SIGN_BOX.height}"><path d="${path}" fill="${filled ? "#000" : "#fff"}" stroke="#000" stroke-width="1.4" stroke-dasharray="${dash}"/></svg> ${key.says}</li>`;
};

const pictured = (view: PictureView, { picture }: ReportSurroundings): Html => html`<figure class="picture">
<figcaption>${view.title}</figcaption>
${trusted(picture(view))}
${view.key.length > 0 && html`<ul class="key">${view.key.map(sign)}</ul>`}
</figure>`;

const table = ({ title, heads, rows, cut }: TableView, { words }: ReportModel): Html | false =>
  rows.length > 0 &&
  html`<p class="above">${title}</p><table class="figures">
<thead><tr>${heads.map(({ text, number }) => html`<th scope="col" class="${number && "number"}">${text}</th>`)}<th scope="col"></th></tr></thead>
<tbody>${rows.map(
    ({ cells, note }) =>
      html`<tr>${cells.map((cell, i) => (i === 0 ? html`<th scope="row">${prose(cell)}</th>` : html`<td class="${heads[i]?.number && "number"}">${cell}</td>`))}<td class="note">${note}</td></tr>`,
  )}</tbody></table>${cut > 0 && html`<p class="small">${words.cut}</p>`}`;

const section = (answer: AnswerView, model: ReportModel, surroundings: ReportSurroundings): Html => {
  const { words } = model;
  return html`<section class="answer"><div class="opening"><h2>${answer.title}</h2>
<p class="decides"><b>${words.decides}:</b> ${prose(answer.decides)}</p>
${answer.tooFew !== "" && html`<p class="too-few">${prose(answer.tooFew)}</p>`}
${answer.says.map((text, i) => html`<p class="${i === 0 ? "says" : ""}">${prose(text)}</p>`)}</div>
${answer.signals.length > 0 && html`<ul class="signals">${answer.signals.map((text) => html`<li><b>${words.standsOut}:</b> ${prose(text)}</li>`)}</ul>`}
${answer.pictures.map((view) => pictured(view, surroundings))}
${answer.tables.map((one) => table(one, model))}
${(answer.counted.length > 0 || answer.held !== "") && html`<p class="small"><b>${words.counted}:</b> ${prose([...answer.counted, answer.held].filter((text) => text !== "").join(" "))}</p>`}
</section>`;
};

/** The company owner's report as one HTML document, ready to print. Everything that somebody typed is escaped. */
export const reportPage = (model: ReportModel, surroundings: ReportSurroundings): string => {
  const { title, first, nothingFirst, notes, answers, words, language } = model;
  return html`<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><title>${title.document}</title>
<style>${trusted(surroundings.fonts)}</style><style>${trusted(reportStyle(model))}</style></head>
<body><main class="report">
${titleBlock(model)}
<section class="first"><h2>${words.standsOut}</h2>
${first.length === 0 ? html`<p class="lead">${nothingFirst}</p>` : html`<ul class="signals">${first.map(({ question, text }) => html`<li><b>${question.endsWith("?") ? question : `${question}:`}</b> ${prose(text)}</li>`)}</ul>`}
${notes.map((note) => html`<p class="small">${prose(note)}</p>`)}</section>
${answers.map((answer) => section(answer, model, surroundings))}
</main></body></html>`.text;
};

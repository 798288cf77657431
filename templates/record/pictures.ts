import type { PictureView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { measuredLines } from "./measured.ts";
import { prose } from "./prose.ts";
import { shape, verdictMark } from "./tone.ts";
import type { Say } from "./words.ts";

/** What print has of a picture: an address on its own made-up origin, or the reason why it has nothing. */
export type PrintedPhoto = (
  picture: Pick<PictureView, "photo" | "rendition" | "missing">,
) => { readonly address: string /** Fetched when it comes into view. */; readonly later?: boolean } | { readonly missing: string };

/** Two beside each other and at most two rows to a page; a row is never parted from its captions. */
export const pictures = (views: readonly PictureView[], say: Say, photo: PrintedPhoto): Html | false =>
  views.length > 0 &&
  html`<div class="pictures"><p class="above">${say("pictures")}</p>${pairs(views).map(
    (pair) => html`<div class="${pair.length === 2 ? "pair" : "lone"}">${pair.map((view) => figure(view, say, photo))}</div>`,
  )}</div>`;

const pairs = (views: readonly PictureView[]): (readonly PictureView[])[] =>
  views.flatMap((view, at) => (at % 2 === 1 ? [] : [[view, ...views.slice(at + 1, at + 2)]]));

/** What the picture settles is said with its mark; a picture that settles nothing has its title alone. */
const heading = ({ title, finding }: PictureView): Html =>
  finding === undefined
    ? html`<p class="picture-title">${prose(title)}</p>`
    : html`<p>${verdictMark(finding.tone, finding.verdictWord)} ${!finding.says.startsWith(title) && html`<b>${prose(title)}</b> `}${prose(finding.says)}</p>`;

const figure = (view: PictureView, say: Say, photo: PrintedPhoto): Html => {
  const printed = photo(view);
  const said = [view.when, view.place, view.lookedAt].filter((text) => text !== "");
  return html`<figure role="group">${
    "address" in printed
      ? html`<div class="mount${view.measured && " measured"}"><img${printed.later && html` loading="lazy"`} src="${printed.address}" alt="${view.alt}">${view.measured && measuredLines(view.measured)}</div>`
      : html`<div class="mount missing"><p>${shape("missing")} <b>${say("photo-missing")}:</b> ${prose(printed.missing)}</p></div>`
  }<figcaption>${heading(view)}
${view.caption !== "" && html`<p>${prose(view.caption)}</p>`}
${view.measured?.says.map((said) => html`<p>${prose(said)}</p>`)}
<p class="small">${said.map((text) => html`${prose(text)} · `)}${view.number !== undefined && html`${say("entry")} ${view.number} · `}${say("photo")} ${view.photo.slice(0, 16)}</p></figcaption></figure>`;
};

import { type Html, html } from "../html.ts";
import { prose } from "./prose.ts";

/** A part of the record as its contents name it; `under`: it belongs to the part before it. */
export interface Listed {
  readonly id: string;
  readonly title: string;
  readonly under?: boolean;
}

/** Page on which each part begins, by its id; empty as long as nobody has laid the pages out. */
export type Pages = Readonly<Record<string, number>>;

/** Stands where a page is not known yet: as wide as any number of pages, so that filling it in moves nothing. */
export const ROOM_FOR_PAGE = "000";

export const contents = (parts: readonly Listed[], pages: Pages, title: string): Html => html`<nav class="contents"><h2>${title}</h2>
<ol>${parts.map(
  ({ id, title: name, under }) =>
    html`<li class="${under && "under"}"><a href="#${id}"><span>${prose(name)}</span><span class="page">${pages[id] ?? ROOM_FOR_PAGE}</span></a></li>`,
)}</ol></nav>`;

export const contentsStyle = `
.contents { break-inside: avoid; }
.contents ol { list-style: none; columns: 2; column-gap: 8mm; font-size: 8.4375pt; line-height: 1.3; }
.contents li { break-inside: avoid; }
.contents a { display: flex; justify-content: space-between; gap: 3mm; padding: .55mm 0; color: inherit; text-decoration: none; border-bottom: .3pt solid var(--hair); font-weight: 600; }
.contents .under a { padding-left: 4mm; font-weight: 400; }
.contents .page { flex: none; width: 8mm; text-align: right; }
`;

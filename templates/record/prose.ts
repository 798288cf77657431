import { type Html, html } from "../html.ts";

const BREAKABLE = /[-/–—⁄]/;
// Longer ones are addresses or nonsense, and must be allowed to break or they would run off the page.
const LONGEST_KEPT = 28;

/**
 * A sentence whose hyphenated words, fractions and ranges stay on one line: a reader of the PDF's text drops a hyphen at
 * a line's end, and '24 3/8' must not be read as '24 3' and '8'.
 */
export const prose = (text: string): Html =>
  html`${text.split(/(\s+)/).map((word) => (BREAKABLE.test(word) && word.length <= LONGEST_KEPT ? html`<span class="kept">${word}</span>` : word))}`;

/** Parts of a list as they stand, each short one on a line of its own or with others, and never broken: '10 ft' and '3/4 in'. */
export const parts = (list: string): Html =>
  html`${list.split(/(?<=; )/).map((part) => (part.trimEnd().length <= LONGEST_KEPT ? html`<span class="kept">${part.trimEnd()}</span> ` : prose(part)))}`;

export const paragraphs = (texts: readonly string[]): Html => html`${texts.map((text) => html`<p>${prose(text)}</p>`)}`;

/** 'gasket under the flange · fitting A' */
export const tagged = (title: string, tag: string | undefined): Html =>
  html`${prose(title)}${tag === undefined ? undefined : html` · ${prose(tag)}`}`;

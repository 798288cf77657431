import type { Tone } from "#core/record/index.ts";
import { type Html, html, trusted } from "../html.ts";

// One shape each, so that a black-and-white print and an eye that takes red for green read the same.
const shapes: Readonly<Record<Tone, string>> = {
  within: '<circle class="full" cx="6" cy="6" r="5"/><path class="cut" d="M3.4 6.2l1.8 1.8 3.4-3.9"/>',
  outside: '<path class="full" d="M.8 1.2h10.4L6 11z"/><path class="cut" d="M6 3v3.2M6 7.4v1"/>',
  undecided: '<path class="line" d="M6 .9L11.1 6 6 11.1.9 6z"/><path class="full" d="M6 .9v10.2L.9 6z"/>',
  missing: '<path class="line dashed" d="M1.3 1.3h9.4v9.4H1.3z"/>',
  apart: '<circle class="line" cx="6" cy="6" r="5"/><path class="line" d="M3 6h6"/>',
};

/** The shape alone, hidden from readers of the text: the word always stands beside it. */
export const shape = (tone: Tone): Html => html`<svg class="shape" viewBox="0 0 12 12" aria-hidden="true">${trusted(shapes[tone])}</svg>`;

export const verdictMark = (tone: Tone, word: string): Html => html`<span class="mark ${tone}">${shape(tone)}<b>${word}</b></span>`;

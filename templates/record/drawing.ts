import type { DrawingView, DrawnShape, Placed } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";
import { prose } from "./prose.ts";

const matrix = (placed: Placed): string => `matrix(${placed.join(" ")})`;

function drawn(shape: DrawnShape): Html {
  switch (shape.shape) {
    case "line":
      return html`<polyline class="${shape.stroke} ${shape.filled ?? "open"}" points="${shape.points.map(({ x, y }) => `${x},${y}`).join(" ")}"/>`;
    case "ellipse":
      return html`<ellipse class="${shape.stroke} ${shape.filled ?? "open"}" transform="${matrix(shape.placed)}" rx="${shape.rx}" ry="${shape.ry}"/>`;
    case "words":
      return html`<text class="${shape.heavy && "heavy"}" transform="${matrix(shape.placed)}" font-size="${shape.size}" text-anchor="${shape.anchor}">${shape.text}</text>`;
  }
}

/** A drawing at its own size, under a strip that says its scale. `id` is its name on the page. */
export const drawing = ({ width, height, title, says, scale, shapes }: DrawingView, id: string): Html => html`<div class="drawing">
<svg role="img" aria-labelledby="${id}-title ${id}-says" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
<title id="${id}-title">${title}</title><desc id="${id}-says">${says}</desc>
${shapes.map(drawn)}
</svg>
<p class="small strip"><b>${title}.</b> ${prose(scale)}</p></div>`;

export const drawingStyle = `
.drawing { border: .9pt solid var(--line); background: #fff; break-inside: avoid; margin-bottom: 3mm; }
.drawing svg { display: block; max-width: 100%; margin: 0 auto; }
.drawing .strip { border-top: .6pt solid var(--line); padding: 1mm 2.2mm; background: var(--paper); }
.drawing text { font-family: "Record Sans", sans-serif; font-weight: 400; fill: var(--ink); }
.drawing text.heavy { font-weight: 700; }
.drawing polyline, .drawing ellipse { stroke: var(--ink); stroke-linejoin: round; stroke-linecap: round; }
.drawing .open { fill: none; }
.drawing .ink { fill: var(--ink); }
.drawing .paper { fill: #fff; }
.drawing .water { stroke: var(--clear); stroke-width: .3; }
.drawing .hair.water { fill: #e3efee; stroke: none; }
.drawing .outline { stroke-width: .45; }
.drawing .ground { stroke-width: .6; }
.drawing .buried { stroke-width: .7; stroke-dasharray: 2.6 1.3; }
.drawing .dimension { stroke-width: .14; }
.drawing .grid { stroke: #cdc6b6; stroke-width: .13; }
.drawing .advised { stroke-width: .55; stroke-dasharray: .1 1.25; }
.drawing .wish { stroke-width: .3; stroke-dasharray: 3 .9 .1 .9; }
.drawing .hair { stroke-width: .13; }
.drawing .bare { stroke: none; }
.drawing .ellipse { stroke: var(--clear); stroke-width: .28; stroke-dasharray: .9 .7; }
`;

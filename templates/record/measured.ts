import type { MeasuredPhotoView, PhotoLineView } from "#core/record/index.ts";
import { type Html, html } from "../html.ts";

const path = ({ strokes }: PhotoLineView): string =>
  strokes.map((points) => `M${points.map(({ x, y }) => `${x} ${y}`).join("L")}`).join("");

/** Dark over a light rim: it reads on any ground, in grey as well. */
const line = (view: PhotoLineView): Html =>
  html`<path class="rim" stroke-width="${3 * view.thick}" d="${path(view)}"/><path class="line" stroke-width="${view.thick}" d="${path(view)}"/>`;

const words = ({ plate, at, size, text }: PhotoLineView): Html =>
  html`<rect x="${plate.x}" y="${plate.y}" width="${plate.width}" height="${plate.height}"/><text x="${at.x}" y="${at.y}" font-size="${size}" text-anchor="middle">${text}</text>`;

/** What was measured in a photo, drawn over it; nothing where no line can be. */
export const measuredLines = ({ width, height, lines, says }: MeasuredPhotoView): Html | false =>
  lines.length > 0 &&
  html`<svg role="img" aria-label="${says.join(" ")}" viewBox="0 0 ${width} ${height}">${lines.map(line)}${lines.map(words)}</svg>`;

export const measuredStyle = `
.mount.measured { display: grid; grid-template: 100% / 100%; }
.mount.measured img, .mount.measured svg { grid-area: 1 / 1; width: 100%; height: 100%; object-fit: contain; }
.measured path { fill: none; stroke-linecap: round; stroke-linejoin: round; }
.measured .rim { stroke: #fff; stroke-opacity: .85; }
.measured .line { stroke: var(--ink); }
.measured rect { fill: #fff; }
.measured text { font-family: "Record Sans", sans-serif; font-weight: 600; fill: var(--ink); }
`;

import type { CardsPageModel } from "#core/record/index.ts";

/**
 * Nothing here moves a code: all of them stand in one drawing of the whole page. The words keep to a block between the codes, the
 * ruler and the paper's edge, and are cut off there.
 */
export const cardsStyle = ({ paper, width, height }: CardsPageModel): string => `
@page { size: ${paper === "a4" ? "A4" : "letter"}; margin: 0; }
* { margin: 0; padding: 0; box-sizing: border-box; }
body { font: 400 11.0625pt/1.35 "Record Sans", sans-serif; color: #000; background: #fff; font-variant-ligatures: none; hyphens: none; print-color-adjust: exact; }
.card { position: relative; width: ${width}mm; height: ${height}mm; overflow: hidden; break-inside: avoid; }
.card + .card { break-before: page; }
.whole-card { position: absolute; left: 0; top: 0; display: block; }
.whole-card path { fill: #000; shape-rendering: crispEdges; }
.ruler path { fill: none; stroke: #000; stroke-width: .2; }
.ruler text { font: 400 2.6px "Record Sans", sans-serif; dominant-baseline: central; fill: #000; }
.large { position: absolute; left: 12mm; top: 74mm; width: 56mm; height: 60mm; overflow: hidden; font-size: 99.9375pt; line-height: 60mm; font-weight: 700; text-align: center; }
.said { position: absolute; left: 92mm; right: 12mm; top: 74mm; height: 131mm; overflow: hidden; }
.kind { font-size: 9pt; font-weight: 600; }
h1 { font-size: 17.0625pt; line-height: 1.15; font-weight: 700; margin-top: 2mm; max-height: 3.45em; overflow: hidden; overflow-wrap: anywhere; }
.own-number { font-weight: 600; }
h2 { font-size: 17.0625pt; line-height: 1.2; font-weight: 700; margin: 4mm 0 5mm; padding-top: 2mm; border-top: 1.2pt solid #000; max-height: 3.9em; overflow: hidden; }
ol { padding-left: 5mm; font-size: 9.9375pt; }
li { margin-bottom: 1.8mm; }
.kept { white-space: nowrap; }
`;

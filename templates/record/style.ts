import type { RecordModel } from "#core/record/index.ts";
import { cssString } from "../html.ts";
import { contentsStyle } from "./contents.ts";
import { drawingStyle } from "./drawing.ts";
import { enclosuresStyle } from "./enclosures.ts";
import { measuredStyle } from "./measured.ts";
import { sheetOfPaper } from "./paper.ts";
import { tables } from "./tables.ts";
import type { Say } from "./words.ts";

/**
 * Print style sheet. No ligatures, no hyphenation, no letter-case changes: the PDF's text must read as the model wrote it.
 */
export const styleSheet = (model: RecordModel, say: Say): string => {
  const { title, company } = model;
  const strip = {
    left: cssString(company.name),
    middle: cssString(`${title.record} · ${title.job}${title.ownNumber === undefined ? "" : ` · ${title.ownNumber}`}`),
    right: `${cssString(`${say("version")} ${title.version} · ${say("page")} `)} counter(page) ${cssString(` ${say("of-pages")} `)} counter(pages)`,
  };
  return `${sheetOfPaper(model.paper, strip)}\n${lettering}\n${coloursOf(model)}\n${tables}\n${drawingStyle}\n${measuredStyle}\n${contentsStyle}\n${enclosuresStyle}`;
};

const COLOUR = /^#[0-9a-f]{6}$/;

/** The company's own colours, on what carries no meaning of its own. A model may have come in an archive: what is no colour is left out. */
export const coloursOf = ({ company: { colours } }: RecordModel): string =>
  colours === undefined || ![colours.lines, colours.words ?? colours.lines].every((one) => COLOUR.test(one))
    ? ""
    : `.title-block { border-top: 3mm solid ${colours.lines}; }\nh2 { border-top-color: ${colours.lines}; }${
        colours.words === undefined ? "" : `\n.title-block .kind, .company-name { color: ${colours.words}; }`
      }`;

/**
 * Ink, letters, title block, marks: the look that all printed documents share. Letters are quarters of a CSS pixel high, 0.1875 pt: at
 * any other height the browser places each of them by itself in its PDF, which everything that reads the file has to follow.
 */
export const lettering = `
:root { --ink: #191815; --soft: #56524a; --line: #191815; --hair: #b9b1a0; --paper: #fdfbf5; --red: #b3261e; --clear: #08696b; }
* { box-sizing: border-box; margin: 0; padding: 0; }
html { font: 400 8.8125pt/1.38 "Record Sans", sans-serif; color: var(--ink); font-variant-ligatures: none; font-kerning: normal; hyphens: manual;
  -webkit-print-color-adjust: exact; print-color-adjust: exact; }
/* A line on the very edge of the page area is cut off where the paper is no whole number of pixels wide. */
main { padding: 0 .5mm; }
.kept { white-space: nowrap; }
p, dd, td, th, li { overflow-wrap: break-word; orphans: 2; widows: 2; }
p + p { margin-top: 1mm; }
.small { font-size: 7.125pt; line-height: 1.35; color: var(--soft); }
h1 { font-size: 18.9375pt; line-height: 1.15; font-weight: 700; }
h2 { font-size: 12pt; line-height: 1.2; font-weight: 700; margin: 5.5mm 0 2mm; padding-top: 1.6mm; border-top: 1.4pt solid var(--line); }
h3 { font-size: 9.9375pt; line-height: 1.3; font-weight: 700; margin: 3.5mm 0 1.4mm; }
.above { font-size: 7.6875pt; line-height: 1.3; font-weight: 600; color: var(--soft); margin: 2mm 0 .8mm; }
h2, h3, .above { break-after: avoid; break-inside: avoid; }
section.whole, .part { break-inside: avoid; }

.title-block { border: 1.4pt solid var(--line); display: grid; grid-template-columns: 1fr 48mm; background: #fff; }
.title-block .name { padding: 4mm 4mm 5mm; border-right: .6pt solid var(--line); }
.title-block .kind { font-size: 9.9375pt; font-weight: 600; color: var(--clear); margin-bottom: 1mm; }
.title-block .row, .title-block .company { grid-column: 1 / -1; border-top: .6pt solid var(--line); }
.company { padding: 2mm 4mm 2.4mm; display: flex; gap: 5mm; align-items: center; font-size: 8.0625pt; }
.company-lines { display: flex; flex-wrap: wrap; gap: 0 4mm; align-items: baseline; }
.company p + p { margin-top: 0; }
.company-mark { flex: none; line-height: 0; }
.company-mark img { max-width: 34mm; max-height: 13mm; }
.company-name { font-weight: 700; font-size: 9.375pt; }

.compartments { display: grid; border: .6pt solid var(--line); background: #fff; }
.compartments > div { padding: .9mm 2.2mm 1.1mm; break-inside: avoid; box-shadow: 0 0 0 .3pt var(--hair); }
.compartments dt { font-size: 6.75pt; line-height: 1.35; color: var(--soft); }
.compartments dd { font-weight: 600; }
.compartments.figures { grid-template-columns: repeat(4, 1fr); }
.compartments.row { grid-template-columns: repeat(3, 1fr); }
.compartments.head { border-top: 0; }
dl + p { margin-top: 2.5mm; }
.compartments .hash { font-size: 8.0625pt; font-weight: 400; }
.title-block .compartments { border: 0; }
.title-block .row { border-top: .6pt solid var(--line); }

.lead { font-size: 11.0625pt; line-height: 1.4; font-weight: 600; }
.standing h2 { margin-top: 5mm; border-top: 0; padding-top: 0; margin-bottom: 1.2mm; }
.short { display: grid; grid-template-columns: 1fr 1fr; gap: 6mm; }
ul.in-short, ul.tied-short { list-style: none; font-size: 8.25pt; line-height: 1.32; border-top: .6pt solid var(--line); }
ul.in-short li, ul.tied-short li { padding: .5mm 0; border-bottom: .3pt solid var(--hair); break-inside: avoid; }
ul.tied-short { columns: 2; column-gap: 6mm; }
.tied-short + p { margin-top: 1mm; }
.upkeep { columns: 2; column-gap: 6mm; margin-bottom: 2mm; }
.upkeep > div { break-inside: avoid; }
.upkeep ul { list-style: none; font-size: 8.25pt; line-height: 1.34; margin-bottom: 2mm; }
.upkeep li { padding: .4mm 0; break-inside: avoid; border-top: .3pt solid var(--hair); }
section.steps > h2 { margin-bottom: 0; }
.step h3 { font-size: 11.0625pt; margin-top: 4.5mm; }
.balloon { display: inline-block; margin-right: 1.2mm; min-width: 7.4mm; height: 7.4mm; border: .9pt solid var(--line); border-radius: 4mm; text-align: center; line-height: 6.9mm; font-size: 9.375pt; background: #fff; }
ul.cautions { list-style: none; border-left: 2.2pt solid var(--red); padding: .3mm 0 .3mm 3mm; margin: 0 0 2mm; font-size: 7.875pt; line-height: 1.32; break-inside: avoid; break-after: avoid; }
ul.cautions li + li { margin-top: .3mm; }
section > ul.cautions { columns: 2; column-gap: 6mm; break-inside: auto; }
.step > ul.cautions { columns: 1; break-inside: avoid; }
ul.cautions li { break-inside: avoid; }
.notes { break-inside: avoid; }

.mark { display: inline-flex; gap: 1.4mm; align-items: baseline; }
.mark b { font-weight: 600; }
.shape { flex: none; width: 2.9mm; height: 2.9mm; position: relative; top: .35mm; stroke-width: 1.1; }
.shape .full { fill: currentColor; }
.shape .line { fill: none; stroke: currentColor; }
.shape .dashed { stroke-dasharray: 2 1.35; }
.shape .cut { fill: none; stroke: #fff; stroke-width: 1.3; }
.mark.within { color: var(--clear); }
.mark.outside, .mark.undecided, .mark.missing, .mount.missing .shape { color: var(--red); }

.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm; break-inside: avoid; margin-bottom: 3mm; }
.lone { break-inside: avoid; margin-bottom: 3mm; }
.lone figure { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm; align-items: end; }
.mount { border: .6pt solid var(--line); background: #fff; padding: 1.2mm; height: 60mm; display: flex; align-items: center; justify-content: center; }
.mount img { display: block; max-width: 100%; max-height: 100%; }
.mount.missing { border: 1pt dashed var(--red); padding: 6mm; }
.pictures .missing .shape { display: inline-block; }
figcaption { font-size: 8.25pt; line-height: 1.32; padding: 1mm 0 0 2mm; border-left: .6pt solid var(--line); }
.picture-title { font-weight: 600; }
figcaption p + p { margin-top: .4mm; }
.pictures .above { margin-top: 2mm; }
.lone .mount { height: 46mm; }
.notes { margin-bottom: 2.5mm; }
.notes p { font-size: 8.25pt; line-height: 1.32; }
.notes p.above { font-size: 7.6875pt; }
`;

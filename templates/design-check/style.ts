import type { DesignPageModel } from "#core/record/index.ts";
import { cssString } from "../html.ts";
import { drawingStyle } from "../record/drawing.ts";
import { sheetOfPaper } from "../record/paper.ts";
import { lettering } from "../record/style.ts";
import { tables } from "../record/tables.ts";

/** The record's look, set closer: all of it is to stand on one page. */
export const designStyle = ({ title, company, words, paper }: DesignPageModel, size: number): string => {
  const strip = {
    left: cssString(company.name),
    middle: cssString(`${title.page} · ${title.job}${title.ownNumber === undefined ? "" : ` · ${title.ownNumber}`}`),
    right: `${cssString(`${words.page} `)} counter(page) ${cssString(` ${words.of} `)} counter(pages)`,
  };
  return `${sheetOfPaper(paper, strip)}\n${lettering}\n${tables}\n${drawingStyle}\n${closer}\nmain { zoom: ${size}; }`;
};

const closer = `
.design-check .title-block { grid-template-columns: 1fr auto; }
.design-check .title-block .name { padding: 1.8mm 3mm 2.2mm; border-right: 0; }
.design-check .title-block .company { grid-column: auto; border-top: 0; padding: 1.8mm 3mm; display: block; text-align: right; font-size: 7.125pt; line-height: 1.3; }
.design-check h1 { font-size: 15pt; }
.design-check .title-block .kind { font-size: 9pt; margin-bottom: .4mm; }
.design-check .company-name { font-size: 8.4375pt; }
.design-check .compartments > div { padding: .5mm 3mm .7mm; }
.design-check .compartments.row { grid-template-columns: repeat(auto-fit, minmax(0, 1fr)); grid-auto-flow: column; }
.design-check .compartments dd { font-size: 8.0625pt; line-height: 1.3; }
.design-check .lead { font-size: 9.5625pt; margin: 1.8mm 0; }

.columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 5mm; align-items: start; }
.question { border-top: .9pt solid var(--line); padding: 1.2mm 0 1.8mm; font-size: 7.875pt; line-height: 1.3; break-inside: avoid; }
.question p + p { margin-top: 0; }
.question h2 { font-size: 8.625pt; line-height: 1.25; margin: 0 0 .6mm; padding: 0; border: 0; display: grid; grid-template-columns: auto 1fr; gap: 0 1.6mm; align-items: center; }
.question .balloon { min-width: 5mm; height: 5mm; line-height: 4.5mm; font-size: 7.3125pt; margin: 0; border-width: .7pt; }
.question .mark { margin-right: 1.2mm; }
.question .change { margin-top: .6mm; display: grid; grid-template-columns: auto 1fr; gap: 0 1.6mm; }
.question .change > p { font-weight: 600; }
.question ul { list-style: none; }
.question li { padding-left: 2.6mm; text-indent: -2.6mm; font-weight: 600; }
.question li * { text-indent: 0; }
.question li::before { content: ""; display: inline-block; width: 1.6mm; margin-right: 1mm; border-top: .7pt solid var(--ink); vertical-align: middle; }
.missing-by-name { margin-top: .5mm; font-weight: 600; }
.question .small { margin-top: .6mm; font-size: 6.5625pt; line-height: 1.26; }
.turns-on { margin-top: .8mm; border-left: .6pt solid var(--line); padding-left: 1.8mm; }
.turns-on > div { display: grid; grid-template-columns: 1fr auto; gap: 0 3mm; align-items: baseline; }
.turns-on > div + div { margin-top: .5mm; }
.turns-on dd { font-weight: 600; }
.turns-on dd.most { grid-column: 1 / -1; font-weight: 400; font-size: 6.5625pt; line-height: 1.25; color: var(--soft); }

.design-check .drawing { margin: 0 0 1.8mm; }
.design-check .drawing svg { width: 100%; height: auto; }
.design-check .drawing .strip { font-size: 6.5625pt; line-height: 1.25; padding: .7mm 2mm; }
.design-check .notes { margin: 0; }
.design-check .notes p { font-size: 7.3125pt; line-height: 1.28; margin: 0 0 1.2mm; }
.numbers h2, .last h2 { font-size: 8.0625pt; margin: 0; padding: .9mm 0 .7mm; border: 0; }
.numbers { border-top: .9pt solid var(--line); }
.used { font-size: 6.9375pt; line-height: 1.2; margin: 0; table-layout: auto; }
.used th, .used td { padding: .2mm 1.2mm; background: none; }
.used { background: var(--paper); }
.used th { font-weight: 400; }
.used td { font-weight: 600; text-align: right; max-width: 30mm; }
.used tbody { break-inside: auto; }
.used tr + tr { border-top: .3pt solid #ddd6c6; }
.used .from th { font-weight: 700; padding-top: .6mm; }
.used .source { font-weight: 400; color: var(--soft); }
.last { margin-top: 1.4mm; border-top: .9pt solid var(--line); }
.design-check ul.cautions { font-size: 6.75pt; line-height: 1.26; margin: 0; padding: .2mm 0 .2mm 2.4mm; }
`;

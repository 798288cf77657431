import type { ReportModel } from "#core/quality/index.ts";
import { cssString } from "../html.ts";
import { sheetOfPaper } from "../record/paper.ts";
import { lettering } from "../record/style.ts";
import { tables } from "../record/tables.ts";

/** The record's look for figures: black ink alone, so that a copy of a copy says the same. */
export const reportStyle = ({ title, company, words, paper }: ReportModel): string => {
  const strip = {
    left: cssString(company.name),
    middle: cssString(`${title.page} · ${title.month}`),
    right: `${cssString(`${words.page} `)} counter(page) ${cssString(` ${words.of} `)} counter(pages)`,
  };
  return `${sheetOfPaper(paper, strip)}\n${lettering}\n${tables}\n${own}`;
};

const own = `
.report .title-block { grid-template-columns: 1fr auto; }
.report .title-block .name { border-right: 0; }
.report .title-block .company { grid-column: auto; border-top: 0; display: block; text-align: right; }
.opening { break-inside: avoid; break-after: avoid; }
.decides { color: var(--soft); }
.says { font-size: 10.3125pt; line-height: 1.38; font-weight: 600; }
.too-few { border: 1.1pt dashed var(--line); background: #fff; padding: 1.4mm 2.4mm; }
ul.signals { list-style: none; margin: 1.6mm 0; }
ul.signals li { border-left: 2.2pt solid var(--line); padding: .4mm 0 .4mm 3mm; break-inside: avoid; }
ul.signals li + li { margin-top: 1mm; }
.picture { border: .9pt solid var(--line); background: #fff; break-inside: avoid; margin: 2.4mm 0; padding: 1.4mm 2.2mm; }
.picture figcaption { border: 0; padding: 0; font-weight: 600; }
.picture > svg { display: block; width: 100%; height: auto; }
.picture svg text { font-family: "Record Sans", sans-serif; fill: #000; white-space: pre; }
ul.key { list-style: none; display: flex; flex-wrap: wrap; gap: 0 6mm; font-size: 7.6875pt; }
ul.key svg { vertical-align: middle; }
.figures { table-layout: auto; font-size: 7.875pt; line-height: 1.3; }
.figures th.number, .figures td.number { text-align: right; font-variant-numeric: tabular-nums; }
.figures tbody { break-inside: auto; }
.figures tr + tr { border-top: .3pt solid var(--hair); }
.figures th, .figures td { padding: .45mm 1.4mm; }
.figures tbody th { font-weight: 400; }
.figures .note { font-weight: 600; }
`;

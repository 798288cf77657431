export const tables = `
table { width: 100%; border-collapse: collapse; table-layout: fixed; border-top: 1.1pt solid var(--line); border-bottom: .6pt solid var(--line); margin: 0 0 3.5mm; }
thead { display: table-header-group; }
thead th { font-size: 6.75pt; line-height: 1.3; font-weight: 400; color: var(--soft); text-align: left; vertical-align: bottom; border-bottom: .6pt solid var(--line); }
th, td { background: var(--paper); padding: 1mm 1.6mm; vertical-align: top; text-align: left; }
tbody th { font-weight: 600; }
tbody th.sentence { font-weight: 400; }
tbody, tr { break-inside: avoid; }
.readings tbody { break-inside: auto; }
.left tbody, .warranty tbody { break-inside: auto; }
tbody + tbody, .readings tr + tr, .left tr + tr, .warranty tr + tr { border-top: .4pt solid var(--hair); }
.says td { padding-top: 0; padding-bottom: 1.2mm; }
.says p + p { margin-top: .3mm; }
td.verdict { white-space: normal; }
col.verdict { width: 26mm; }
col.wide-verdict { width: 36mm; }
col.covering { width: 33mm; }
col.covered { width: 49mm; }
col.when { width: 30mm; }
col.people { width: 36mm; }
.findings, .left, .readings, .due, .coverings, .exceptions, .accepted, .warranty { font-size: 8.25pt; line-height: 1.32; }
.findings tbody, .due tbody { break-inside: auto; }
.findings tr + tr, .due tr + tr { border-top: .4pt solid var(--hair); }
.findings col.value { width: 25mm; }
.findings col.aim { width: 14mm; }
.findings col.limit { width: 24mm; }
.findings th, .findings td { padding-top: .8mm; padding-bottom: .9mm; }
.readings { font-size: 7.875pt; }
.readings th, .readings td { padding-top: .45mm; padding-bottom: .45mm; }
.readings col.typed { width: 24mm; }
.readings col.how { width: 50mm; }
.readings col.when { width: 35mm; }
col.entry { width: 11mm; }
.readings th { font-weight: 400; }
.readings .set-up th { font-weight: 600; padding-top: 1mm; }
.readings .set-up { break-after: avoid; }
.readings .under th { padding-left: 4mm; }
.readings .aside { color: var(--soft); }
.readings td.figure { font-weight: 600; }
.narrow { font-size: 7.3125pt; line-height: 1.3; }
.narrow th, .narrow td { padding-left: 1mm; padding-right: 1mm; }
col.session { width: 27mm; }
.tied + p { margin-top: 0; }
.figure { font-weight: 600; }
.narrow { font-size: 7.3125pt; line-height: 1.3; }
.narrow th, .narrow td { padding-left: 1mm; padding-right: 1mm; }
col.session { width: 27mm; }
.tied + p { margin-top: 0; }
col.half { width: 45%; }
ul.plainly { list-style: none; columns: 2; column-gap: 6mm; font-size: 8.25pt; line-height: 1.32; border-top: 1.1pt solid var(--line); border-bottom: .6pt solid var(--line); padding: 1mm 0; margin-bottom: 3.5mm; background: var(--paper); }
ul.plainly li { break-inside: avoid; padding: .5mm 0 .5mm 4.3mm; text-indent: -4.3mm; }
ul.plainly li * { text-indent: 0; }
`;

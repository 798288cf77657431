export const tables = `
table { width: 100%; border-collapse: collapse; table-layout: fixed; border-top: 1.1pt solid var(--line); border-bottom: .6pt solid var(--line); margin: 0 0 3.5mm; }
thead { display: table-header-group; }
thead th { font-size: 6.8pt; line-height: 1.3; font-weight: 400; color: var(--soft); text-align: left; vertical-align: bottom; border-bottom: .6pt solid var(--line); }
th, td { background: var(--paper); padding: 1mm 1.6mm; vertical-align: top; text-align: left; }
tbody th { font-weight: 600; }
tbody th.sentence { font-weight: 400; }
tbody, tr { break-inside: avoid; }
.readings tbody { break-inside: auto; }
.left tbody, .warranty tbody { break-inside: auto; }
tbody + tbody, .readings tr + tr, .left tr + tr, .warranty tr + tr { border-top: .4pt solid var(--hair); }
.says td { padding-top: 0; padding-bottom: 1.5mm; }
.says p + p { margin-top: .3mm; }
td.verdict { white-space: normal; }
col.verdict { width: 37mm; }
col.wide-verdict { width: 38mm; }
.findings col.value { width: 34mm; }
.findings col.aim { width: 21mm; }
.findings col.limit { width: 27mm; }
.readings { font-size: 8pt; }
.readings col.typed { width: 27mm; }
.readings col.how { width: 42mm; }
.readings col.when { width: 36mm; }
.readings col.entry { width: 17mm; }
.readings th { font-weight: 400; }
.readings .aside { color: var(--soft); }
.readings td.figure { font-weight: 600; }
.figure { font-weight: 600; }
col.half { width: 45%; }
`;

/** The style of the printed report. */
import type { Paper } from '../handouts/handout-settings.ts';

const margin = { across: 18, down: 16 };
const sizes: Readonly<Record<Paper, readonly [name: string, width: number]>> = {
  a4: ['A4', 210],
  letter: ['letter', 215.9],
};

/** Style sheet of the report: a plain paper, black on white, its charts in the page's light colours. Lengths mm. */
export function reportStyle(paper: Paper): string {
  const [name, width] = sizes[paper];
  return `@page{size:${name};margin:${margin.down}mm ${margin.across}mm;@bottom-right{content:counter(page) " / " counter(pages);font:8pt Barlow,sans-serif;color:#50565a}}
.report{--ink:#1c2125;--sheet:#fff;--rule-firm:#8a867a;--chart-1:#17597a;--chart-2:#906b02;--chart-3:#6f06a1;--chart-4:#22262a;--chart-5:#309b70;--chart-6:#a471ff;--chart-quiet:#838b90;--chart-band:rgb(23 89 122/.13);box-sizing:border-box;width:${width - 2 * margin.across}mm;color:#1c2125;background:#fff;font:10pt/1.42 Barlow,"Segoe UI","Helvetica Neue",Arial,sans-serif;overflow-wrap:break-word}
.report header{padding-bottom:2mm;border-bottom:.6mm solid #1c2125}
.report h1{margin:0;font-size:20pt;font-weight:600;line-height:1.15}
.report h2{margin:7mm 0 2mm;padding:0;font-size:14pt;font-weight:600;line-height:1.2;break-after:avoid}
.report h3{margin:4mm 0 1mm;padding:0;border:0;color:#1c2125;font-size:10.5pt;font-weight:600;break-after:avoid}
.report p,.report ul{margin:0 0 2mm}
.report ul{padding-left:5mm;list-style:disc}
.report-authors{margin-top:1mm!important;font-size:11pt}
.report-made,.report-soft{color:#50565a}
.report table{width:100%;margin:3mm 0 5mm;border-collapse:collapse;border-top:.4mm solid #1c2125;border-bottom:.4mm solid #1c2125;font-size:8.5pt;line-height:1.3}
.report caption{padding-bottom:1.5mm;font-size:9pt;text-align:left;break-after:avoid}
.report thead{display:table-header-group}
.report tr{break-inside:avoid}
.report th,.report td{padding:.7mm 2mm .7mm 0;border:0;border-bottom:.15mm solid #cfccc2;font-weight:400;text-align:left;vertical-align:baseline}
.report thead th{border-bottom:.3mm solid #1c2125;font-weight:600;vertical-align:bottom}
.report .numeric{text-align:right;font-variant-numeric:tabular-nums}
.report :is(td.numeric,.report-date){white-space:nowrap}
.report .report-long{overflow-wrap:anywhere}
.report .report-short{break-inside:avoid}
.report figure{margin:4mm 0 6mm;break-inside:avoid}
.report .report-panels{break-inside:auto}
.report .report-panels>div{display:flex;flex-wrap:wrap;gap:3mm 2mm}
.report .report-panels svg{break-inside:avoid;max-width:49%}
.report figcaption{margin-top:3mm;font-size:9pt}
.report code,.report pre{font:8.5pt/1.4 ui-monospace,"DejaVu Sans Mono",Consolas,monospace}
.report pre{margin:0 0 1.5mm;white-space:pre-wrap}
.report-function{break-inside:avoid}
.report .chart-legend{display:flex;flex-wrap:wrap;gap:1mm 5mm;margin:0 0 1mm;padding:0;font-size:8.5pt;list-style:none}
.report .chart-mark{margin-right:1mm;vertical-align:-1px}
.report .chart-svg{display:block;max-width:100%;height:auto;overflow:visible;color:#1c2125;font-family:inherit;font-size:12px}
.report .chart-svg text{white-space:pre}
@media print{.report{width:auto}}
`;
}

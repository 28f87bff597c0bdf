/** The style of printed handouts. */
import type { Paper } from './handout-settings.ts';

const margin = 12;
const sizes: Readonly<Record<Paper, readonly [name: string, width: number, height: number]>> = {
  a4: ['A4', 210, 297],
  letter: ['letter', 215.9, 279.4],
};

/**
 * Style sheet of handouts: black on white for the printer, one page per athlete. Lengths mm. The figures take the room that
 * the words leave, so that a page with much to say still is one page; an observed squat has its own.
 */
export function handoutStyle(paper: Paper): string {
  const [name, width, height] = sizes[paper];
  return `@page{size:${name};margin:${margin}mm}
.handout{box-sizing:border-box;display:flex;flex-direction:column;gap:3mm;width:${width - 2 * margin}mm;min-height:${height - 2 * margin - 1}mm;color:#1c2125;background:#fff;font:10pt/1.38 Barlow,"Segoe UI","Helvetica Neue",Arial,sans-serif}
.handout header{display:grid;grid-template-columns:1fr auto;align-items:baseline;padding-bottom:1.5mm;border-bottom:.6mm solid #1c2125}
.handout-book{grid-column:1/-1;margin:0;color:#50565a;font-size:8.5pt}
.handout h1{margin:0;font-size:19pt;font-weight:600;line-height:1.15;overflow-wrap:anywhere}
.handout h2{margin:0 0 1mm;font-size:11pt;font-weight:600;line-height:1.2}
.handout p,.handout ul{margin:0}
.handout ul{padding-left:4.5mm;list-style:disc}
.handout li{margin-bottom:.8mm}
.handout-tested{color:#50565a}
.handout-figures{display:flex;flex:100 1 36mm;justify-content:space-evenly;gap:4mm;min-height:0;max-height:97mm}
.handout figure{display:flex;flex-direction:column;margin:0;width:76mm;min-height:0;text-align:center}
.handout figcaption{font-weight:600}
.handout-columns{display:grid;grid-template-columns:72mm 1fr;gap:7mm;flex:1 0 auto}
.handout-words{display:flex;flex-direction:column;gap:3.5mm}
.handout table{width:100%;border-collapse:collapse}
.handout th,.handout td{padding:.7mm 0;border-bottom:.2mm solid #b9b5aa;font-weight:400;text-align:right;vertical-align:baseline}
.handout th{text-align:left}
.handout td{padding-left:2mm;white-space:nowrap}
.handout td:not(.handout-error){max-width:48mm;white-space:normal}
.handout-error,.handout-none{color:#50565a}
.handout footer{padding:2mm 3mm;border:.4mm solid #1c2125;font-size:8.5pt;break-inside:avoid}
.handout footer h2{font-size:9.5pt}
.handout footer li{margin-bottom:0}
.handout-observed{flex:1 0 auto}
.handout-observed td{border:0;padding:.2mm 0 .2mm 2mm}
.handout-observed th{border:0;padding:.2mm 0}
.handout-observed caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.handout-observed .parts-bar{width:80mm}
.handout-observed svg{display:block;width:100%}
.handout-observed rect{fill:#9a6b16}
.handout-observed .less rect{fill:#3f6675}
.handout-observed .whole rect,.handout-observed .within rect{fill:#b9b5aa}
.handout-observed .within th,.handout-observed .within td{color:#50565a}
.handout-observed .whole th,.handout-observed .whole td{font-weight:600}
.handout-observed ul{margin-top:1mm;font-size:9pt}
.handout-contact{margin-top:1.5mm;font-weight:600}
${drawingStyle}@media print{.handout{break-after:page;break-inside:avoid}.handout:last-child{break-after:auto}}
`;
}

/** The figure in print: ink and two greys, brass for the lift and the error. */
const drawingStyle = `.handout .drawing{display:block;flex:1 1 0;width:100%;min-height:0}
.handout .drawing text{fill:#1c2125;font-size:12px}
.handout .drawing path,.handout .drawing circle,.handout .drawing ellipse{vector-effect:non-scaling-stroke}
.handout .ground-hatch path,.handout .ruler path{stroke:#8a867a;stroke-width:1;fill:none}
.handout .ground>path{stroke:#1c2125;stroke-width:1.5}
.handout .ruler text{font-size:10px;fill:#50565a}
.handout .midfoot path{fill:none;stroke:#9a6b16;stroke-width:1.2;stroke-dasharray:14 3 2 3}
.handout .midfoot text{fill:#6e4a0b;font-size:11px}
.handout .lifter .skin{fill:#e4ecef;stroke:#7d99a4;stroke-width:1}
.handout .lifter .links{fill:none;stroke:#1c2125;stroke-width:2.2}
.handout .lifter .arms{fill:none;stroke:#4a5054;stroke-width:1.4}
.handout .lifter .joint{fill:#fff;stroke:#1c2125;stroke-width:1.5}
.handout .lifter .wedge{stroke:#6e4a0b;stroke-width:1.2}
.handout .wedge-hatch path{stroke:#9a6b16}
.handout .bar circle{fill:#1c2125}
.handout .bar path{stroke:#1c2125;stroke-width:.75}
.handout .plate{fill:#1c2125;fill-opacity:.04;stroke:#8a867a;stroke-width:1}
.handout .fan path{fill:#e3bd72;fill-opacity:.5;stroke:#b98b37;stroke-width:.75}
.handout .reference{fill:none;stroke:#50565a;stroke-width:.9;stroke-dasharray:2 3}
.handout .sweep{fill:none;stroke:#1c2125;stroke-width:1.1}
.handout .angles .lean{font-size:17px;font-weight:600}
.handout .lift-mark path{fill:none;stroke:#6e4a0b;stroke-width:1}
.handout .lift-mark text{fill:#6e4a0b;font-weight:500}
`;

import { escaped, shapeText } from '../figure/drawing/svg-shape.ts';
import type { Paper } from '../handouts/handout-settings.ts';
import type { CohortReport } from './report.ts';
import { reportPage } from './report-page.ts';
import { reportStyle } from './report-style.ts';

/** What a report's document may load: nothing. Its only style is its own. */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** A document of its own with the report: no script, nothing loaded from elsewhere. */
export function reportDocument(report: CohortReport, paper: Paper): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(report.title)}</title>
<style>
body{margin:0}
@media screen{body{display:grid;justify-content:center;padding:8mm;background:#e4e2da}.report{padding:14mm;box-sizing:content-box!important}}
@media screen and (max-width:800px){body{display:block;padding:0}.report{width:auto;padding:5mm;overflow-x:auto}}
${reportStyle(paper)}</style>
</head>
<body>
${shapeText(reportPage(report))}
</body>
</html>
`;
}

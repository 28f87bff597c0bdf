/** The handouts as one HTML document. */
import { escaped, type Shape, shapeText } from '../figure/drawing/svg-shape.ts';
import { handoutPages } from './handout-page.ts';
import type { Paper } from './handout-settings.ts';
import { handoutStyle } from './handout-style.ts';
import type { Handouts } from './handouts.ts';

type Made = Pick<Handouts, 'title' | 'handouts'>;

/** The pages as plain records, for a page that shows them. */
export const handoutShapes = ({ handouts }: Made): readonly Shape[] =>
  handouts.flatMap((handout, index) => handoutPages(handout, `h${index}-`));

/** What a handout's document may load: nothing. Its only style is its own. */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** A document of its own with these handouts: no script, nothing loaded from elsewhere. */
export function handoutDocument(made: Made, paper: Paper): string {
  const title = made.handouts.length === 1 ? `${made.handouts[0]!.athlete} · ${made.title}` : made.title;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
body{margin:0}
@media screen{body{display:grid;justify-content:center;gap:8mm;padding:8mm;background:#e4e2da}.handout{padding:8mm;box-sizing:content-box!important}}
${handoutStyle(paper)}</style>
</head>
<body>
${handoutShapes(made).map(shapeText).join('\n')}
</body>
</html>
`;
}

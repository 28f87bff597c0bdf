import { guides } from '../../guides/index.ts';

/** Text as HTML: nothing in it can become markup. */
export const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

export const list = (items: readonly string[]): string =>
  items.length === 0 ? '' : `<ul>\n${items.map((item) => `<li>${item}</li>`).join('\n')}\n</ul>`;

export interface TableText {
  readonly caption: string;
  readonly headings: readonly string[];
  /** Cells as HTML; the first of a row is its heading. */
  readonly rows: readonly (readonly string[])[];
}

export const table = ({
  caption,
  headings,
  rows,
}: TableText): string => `<div class="wide" tabindex="0" role="region" aria-label="${safe(caption)}"><table>
<caption>${safe(caption)}</caption>
<thead><tr>${headings.map((h) => `<th scope="col">${safe(h)}</th>`).join('')}</tr></thead>
<tbody>
${rows.map(([first, ...rest]) => `<tr><th scope="row">${first}</th>${rest.map((cell) => `<td>${cell}</td>`).join('')}</tr>`).join('\n')}
</tbody></table></div>`;

/** The address of a function inside the reference. */
export const anchor = (name: string): string => name.toLowerCase().replaceAll('.', '-');

const style = `
:root { color-scheme: light dark; --ink: #1d2429; --soft: #56626b; --paper: #fbfaf7; --sheet: #f1efe9; --rule: #d3cfc4; --link: #0b5a72; --mark: #8a4b08; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e8e6; --soft: #a8b1b5; --paper: #171b1e; --sheet: #20262a; --rule: #3b444a; --link: #86c8de; --mark: #e8b26a; } }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 52rem; background: var(--paper); color: var(--ink); font: 1.0625rem/1.6 Barlow, system-ui, sans-serif; }
h1 { font-size: 2rem; line-height: 1.2; margin: 1rem 0 .5rem; }
h2 { font-size: 1.4rem; line-height: 1.3; margin: 2.5rem 0 .5rem; padding-top: .5rem; border-top: 2px solid var(--rule); }
h3 { font-size: 1.1rem; margin: 2rem 0 .25rem; }
h4 { font-size: .95rem; margin: 1rem 0 .25rem; color: var(--soft); }
p, ul, dl, pre, table { margin: .4rem 0; }
ul { padding-left: 1.25rem; }
a { color: var(--link); text-underline-offset: .15em; }
a:focus-visible, summary:focus-visible, .wide:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
.skip { position: absolute; left: -99rem; } .skip:focus { position: static; }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .15rem 1rem; }
code, pre, .signature { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .92em; overflow-wrap: anywhere; }
pre, .signature { background: var(--sheet); padding: .5rem .75rem; border-left: 4px solid var(--rule); white-space: pre-wrap; }
.lead { font-size: 1.15rem; }
.caution { border-left: 4px solid var(--mark); padding-left: .75rem; }
.status { color: var(--soft); }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .95rem; }
caption { text-align: left; color: var(--soft); padding: .25rem 0; }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; border-bottom: 1px solid var(--rule); }
tbody th { font-weight: 600; }
ol { padding-left: 1.6rem; } li > p { margin: .2rem 0; } ol > li { margin: 1rem 0; } img { display: block; width: 100%; height: auto; margin: .6rem 0; border: 1px solid var(--rule); }
details { margin: .4rem 0; } summary { cursor: pointer; color: var(--link); }
@media print { body { max-width: none; font-size: 10pt; background: #fff; color: #000; } nav, .skip { display: none; } h2, h3, tr { break-after: avoid; } section { break-inside: auto; } a { color: inherit; } }
`.trim();

const guideLinks = guides.map(({ id, title }) => `<a href="guide-${id}.html">${safe(title)}</a>`).join(' · ');

/** A whole page: one file, no script, nothing fetched. */
export function page(title: string, lead: string, menu: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(title)} – Leverbook</title>
<style>
${style}
</style>
</head>
<body>
<a class="skip" href="#content">To the content</a>
<header>
<p>Leverbook: ${guideLinks} · <a href="reference.html">Functions</a> · <a href="standard-functions.html">Standard functions</a> · <a href="where-sources-differ.html">Where sources differ</a> · <a href="known-limits.html">Known limits</a> · <a href="formulas.html">How formulas read values</a></p>
<h1>${safe(title)}</h1>
<p class="lead">${safe(lead)}</p>
</header>
<nav aria-label="On this page">
${menu}
</nav>
<main id="content">
${body}
</main>
</body>
</html>
`;
}

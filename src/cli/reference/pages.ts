import type { Page } from '../../../functions/core/pages/index.ts';
import { functionLink } from './function-pages.ts';
import { list, page, safe, table } from './html.ts';

/** A page of texts as one file. */
export function textPage({ title, lead, sections }: Page): string {
  const id = (i: number) => `part-${i + 1}`;
  const menu = list(sections.map((section, i) => `<a href="#${id(i)}">${safe(section.title)}</a>`));
  const body = sections
    .map((section, i) =>
      [
        `<section aria-labelledby="${id(i)}">`,
        `<h2 id="${id(i)}">${safe(section.title)}</h2>`,
        ...section.paragraphs.map((text) => `<p>${safe(text)}</p>`),
        ...(section.table
          ? [table({ ...section.table, rows: section.table.rows.map((row) => row.map(safe)) })]
          : []),
        ...(section.functions
          ? [
              `<p>Functions: ${section.functions.map((name) => functionLink(name, 'reference.html')).join(', ')}</p>`,
            ]
          : []),
        ...(section.sources ? [`<h3>Sources</h3>`, list(section.sources.map(safe))] : []),
        '</section>',
      ].join('\n'),
    )
    .join('\n');
  return page(title, lead, menu, body);
}

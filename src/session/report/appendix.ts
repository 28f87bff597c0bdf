import type { Section } from '../../../functions/core/pages/index.ts';
import { el, type Shape } from '../figure/drawing/svg-shape.ts';
import type { Used } from './functions-used.ts';
import { paragraphs, section, table } from './parts.ts';
import type { CohortReport } from './report.ts';

/** What a reviewer needs to check the numbers: formulas, functions with rules and sources, limits. */
export function appendixOf(
  { formulas, functions, pages }: CohortReport,
  count: (of: 'Table') => string,
): readonly Shape[] {
  return [
    ...(formulas.length > 0
      ? [
          section(
            'Formulas of the book',
            table(
              `${count('Table')} Every formula in the book.`,
              [['Sheet'], ['Where'], ['Formula']],
              formulas.map(({ sheet, place, formula }) => [sheet, place, formula]),
            ),
          ),
        ]
      : []),
    ...(functions.length > 0 ? [section('Functions in use, and their sources', functions.map(used))] : []),
    ...pages
      .filter(({ sections }) => sections.length > 0)
      .map(({ title, sections }) => section(title, sections.map(limit))),
  ];
}

const used = ({ help, places }: Used): Shape =>
  el(
    'div',
    { class: 'report-function' },
    el('h3', {}, el('code', {}, help.signature)),
    el('p', {}, help.summary),
    el('pre', {}, help.rule),
    el('p', { class: 'report-soft' }, `Used in: ${places.join('; ')}.`),
    el(
      'ul',
      {},
      [
        ...help.sources,
        ...help.constants.map(({ name, value, unit, source }) => ({
          status: source.status,
          citation: `${name} = ${Number(value.toPrecision(6))}${unit ? ` ${unit}` : ''}: ${source.citation}`,
        })),
      ].map(({ status, citation }) =>
        el('li', {}, citation.includes(status) ? citation : `${citation} [${status}]`),
      ),
    ),
  );

const limit = ({ title, paragraphs: texts, table: figures, sources = [] }: Section): Shape =>
  el(
    'div',
    {},
    el('h3', {}, title),
    ...paragraphs(...texts),
    figures &&
      table(
        figures.caption,
        figures.headings.map((heading) => [heading] as const),
        figures.rows,
      ),
    sources.length > 0 &&
      el(
        'ul',
        { class: 'report-soft' },
        sources.map((source) => el('li', {}, source)),
      ),
  );

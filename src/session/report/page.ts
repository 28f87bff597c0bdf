import { legendOf } from '../charts/drawing/legend.ts';
import { drawPanel } from '../charts/drawing/panel.ts';
import { sizeFor } from '../charts/drawing/places.ts';
import { el, type Shape } from '../drawing/shape.ts';
import { appendixOf } from './appendix.ts';
import type { Described } from './groups.ts';
import { describedAs } from './groups.ts';
import { methodsOf } from './methods.ts';
import { numbered, paragraphs, section, table } from './parts.ts';
import type { Reliability } from './reliability.ts';
import type { CohortReport } from './report.ts';
import type { ResultTable } from './results.ts';

/** Width of a figure, px: what a page's text is wide at the usual size of type. */
const figureWidth = 660;

/** The report as a document's body. */
export function reportPage(report: CohortReport): Shape {
  const count = numbered();
  const { title, book, authors, on, version, problems } = report;
  return el(
    'article',
    { class: 'report', 'aria-label': title },
    el(
      'header',
      {},
      el('h1', {}, title),
      authors !== null && el('p', { class: 'report-authors' }, authors),
      el('p', { class: 'report-made' }, `From the book “${book}”, ${on}, with Leverbook ${version}.`),
    ),
    problems.length > 0 &&
      section(
        'Could not be made',
        el(
          'ul',
          {},
          problems.map((problem) => el('li', {}, problem)),
        ),
      ),
    section('Methods', methodsOf(report, count)),
    section('Reliability', reliability(report, count)),
    section(
      'Who was measured',
      report.described.length > 0
        ? report.described.map((one) => described(one, count))
        : paragraphs('No measures are described: choose them in what the report holds.'),
    ),
    report.results.length > 0 &&
      section(
        'Results worked out in the book',
        report.results.map((one) => result(one, count)),
      ),
    report.figures.length > 0 && section('Figures', figures(report)),
    section(
      'Cautions',
      el(
        'ul',
        {},
        report.cautions.map((caution) => el('li', {}, caution)),
      ),
    ),
    ...appendixOf(report, count),
  );
}

function reliability(
  { reliability, confidence }: CohortReport,
  count: (of: 'Table') => string,
): readonly Shape[] {
  if (reliability.length === 0)
    return [
      paragraphs('No columns are named as trials of one measure, so nothing is said here of reliability.'),
    ].flat();
  const percent = `${Math.round(confidence * 1000) / 10} %`;
  return [
    table(
      `${count('Table')} Reliability of repeated trials. ICC: intraclass correlation with its ${percent} interval. SEM: standard error of measurement. MDC: minimal detectable change at ${percent}. Bias: first minus second trial, with ${percent} limits of agreement. CV: coefficient of variation of duplicates.`,
      [
        ['Measure'],
        ['n', true],
        ['ICC', true],
        ['form'],
        ['interval', true],
        ['SEM', true],
        ['MDC', true],
        ['bias', true],
        ['limits', true],
        ['CV, %', true],
      ],
      reliability.map((one) => [
        one.title,
        String(one.n),
        one.icc,
        one.form,
        one.interval,
        one.sem,
        one.mdc,
        one.bias,
        one.limits,
        one.cv,
      ]),
    ),
    table(
      `${count('Table')} The trials one by one.`,
      [['Measure'], ['Trial'], ['Mean', true], ['SD', true]],
      reliability.flatMap(({ title, trials }) =>
        trials.map(({ label, mean, sd }, index) => [index === 0 ? title : '', label, mean, sd]),
      ),
    ),
    ...reliability.flatMap((one) => leftOut(one)),
  ];
}

const leftOut = ({ title, sheet, left }: Reliability): readonly Shape[] =>
  left === 0
    ? []
    : paragraphs(
        `${title}: ${left} ${left === 1 ? 'row' : 'rows'} of ${sheet} left out, a trial is missing.`,
      );

function described({ sheet, by, measures }: Described, count: (of: 'Table') => string): Shape {
  const grouped = by !== null;
  return table(
    `${count('Table')} ${sheet}${grouped ? ` by ${by.toLowerCase()}` : ''}: n, mean, standard deviation (n − 1) and percentiles.`,
    [['Measure'], ...(grouped ? [[by] as const] : []), ...describedAs.map((name) => [name, true] as const)],
    measures.flatMap(({ label, groups }) =>
      groups.map(({ name, cells }, index) => [
        index === 0 ? label : '',
        ...(grouped ? [name] : []),
        ...cells,
      ]),
    ),
  );
}

function result({ title, note, headings, rows, more }: ResultTable, count: (of: 'Table') => string): Shape {
  return el(
    'div',
    {},
    table(
      `${count('Table')} ${title}${note ? `. ${note}` : ''}`,
      headings.map(({ label, numeric }) => [label, numeric] as const),
      rows,
    ),
    more !== null && paragraphs(more),
  );
}

function figures({ figures }: CohortReport): readonly Shape[] {
  return figures.map((data, index) => {
    const size = sizeFor(data, figureWidth);
    const many = data.panels.length > 1;
    const axes = many
      ? ` ${data.beside ? `Above: ${data.y.label}; below: ${data.beside.label}` : `Up: ${data.y.label}`}. Across: ${data.x.label}. All drawings have the same axes.`
      : '';
    return el(
      'figure',
      { class: many ? 'report-panels' : undefined },
      legendOf(data, size.height),
      el(
        'div',
        {},
        data.panels.map((panel) => drawPanel(data, panel, size, many ? 'shared' : 'named').shape),
      ),
      el(
        'figcaption',
        {},
        el('strong', {}, `Figure ${index + 1} `),
        `${data.title}.${axes} ${data.notes.join(' ')}`,
      ),
    );
  });
}

import { legendOf } from '../charts/drawing/legend.ts';
import { drawPanel } from '../charts/drawing/panel.ts';
import { sizeFor } from '../charts/drawing/places.ts';
import { el, type Shape } from '../figure/drawing/svg-shape.ts';
import { appendixOf } from './appendix.ts';
import { type Chosen, percentOf } from './chosen.ts';
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
        'Not included',
        el(
          'ul',
          {},
          problems.map((problem) => el('li', {}, problem)),
        ),
      ),
    section('Methods', methodsOf(report, count)),
    section('Reliability', reliability(report, count)),
    section(
      'Participants',
      report.described.length > 0
        ? report.described.map((one) => described(one, count))
        : paragraphs('No measures are described. Select them in the report contents.'),
    ),
    report.results.length > 0 &&
      section(
        'Results',
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
  { reliability, chosen }: CohortReport,
  count: (of: 'Table') => string,
): readonly Shape[] {
  if (reliability.length === 0)
    return [
      paragraphs('No columns are set as trials of one measure, so reliability is not reported.'),
    ].flat();
  const { form } = chosen;
  const percent = percentOf(chosen);
  const pairs = reliability.filter(({ trials }) => trials.length === 2);
  return [
    table(
      `${count('Table')} Reliability of repeated trials. ICC: intraclass correlation of form ${form} with its ${percent} interval. SEM: standard error of measurement. MDC: minimal detectable change at ${percent}, from the SEM before it. ${semWords(chosen)}`,
      [
        ['Measure'],
        ['Unit'],
        ['n', true],
        ['ICC', true],
        [`${percent} interval`, true],
        ['SEM, consistency', true],
        ['MDC', true],
        [byIccHeading(chosen), true],
        ['MDC', true],
      ],
      reliability.map((one) => [
        one.title,
        one.unit || '–',
        String(one.n),
        one.icc,
        one.interval,
        one.consistency.sem,
        one.consistency.mdc,
        one.byIcc.sem,
        one.byIcc.mdc,
      ]),
    ),
    ...(pairs.length === 0
      ? []
      : [
          table(
            `${count('Table')} Agreement of two trials. Bias: mean of first minus second trial, with ${percent} limits of agreement. CV: coefficient of variation of duplicates.`,
            [['Measure'], ['Unit'], ['n', true], ['Bias', true], ['Limits', true], ['CV (%)', true]],
            pairs.map((one) => [one.title, one.unit || '–', String(one.n), one.bias, one.limits, one.cv]),
          ),
        ]),
    table(
      `${count('Table')} The trials one by one, of the rows with every trial.`,
      [['Measure'], ['Trial'], ['n', true], ['Mean', true], ['SD', true]],
      reliability.flatMap(({ title, n, trials }) =>
        trials.map(({ label, mean, sd }, index) => [index === 0 ? title : '', label, String(n), mean, sd]),
      ),
    ),
    ...reliability.flatMap((one) => leftOut(one)),
  ];
}

/** A form of consistency leaves the trials' bias out of the ICC, so the SEM from it is not one of agreement. */
const byIccHeading = ({ form }: Chosen): string => (form[0] === '3' ? 'SEM, from the ICC' : 'SEM, agreement');

function semWords({ form }: Chosen): string {
  const of = form.endsWith('k')
    ? 'the SD of the row means, so of the mean of the trials'
    : 'the SD of all values, so of one trial';
  const carries =
    form[0] === '3'
      ? 'Form 3 excludes a shift between trials from both'
      : 'Only this one includes a shift between trials';
  return `Consistency: √(residual mean square), of one trial. ${form[0] === '3' ? 'From the ICC' : 'Agreement'}: SD · √(1 − ICC) with ${of}. ${carries}.`;
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
      ? ` ${data.beside ? `Above: ${data.y.label}; below: ${data.beside.label}` : `y-axis: ${data.y.label}`}. x-axis: ${data.x.label}. Shared axes.`
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

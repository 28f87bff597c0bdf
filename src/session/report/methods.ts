import type { Shape } from '../figure/drawing/svg-shape.ts';
import { percentOf } from './chosen.ts';
import { paragraphs, table } from './parts.ts';
import type { CohortReport } from './report.ts';

/** What a sheet is for, as the page says it. */
const typeWords: Readonly<Record<string, string>> = { gathered: 'Data', worked: 'Results', notes: 'Notes' };

/** How the numbers came about: the authors' words, then what the program knows. */
export function methodsOf(report: CohortReport, count: (of: 'Table') => string): readonly Shape[] {
  const { sheets, imports, named, doubts, methods } = report;
  const hidden = sheets.filter(({ rows, shown }) => shown < rows);
  return [
    ...(methods === null ? [] : paragraphs(methods)),
    ...paragraphs(sentences(report).join(' ')),
    table(
      `${count('Table')} The sheets of the book.`,
      [['Sheet'], ['Type'], ['Rows', true], ['Rows counted', true]],
      sheets.map(({ label, purpose, rows, shown }) => [
        label,
        typeWords[purpose] ?? purpose,
        String(rows),
        String(shown),
      ]),
    ),
    ...(hidden.length > 0
      ? paragraphs('Rows that a sheet’s filter hides are not counted in tables and figures of this report.')
      : []),
    ...(imports.length > 0
      ? [
          table(
            `${count('Table')} Imported files, with the SHA-256 of each.`,
            [['File'], ['Sheet'], ['Imported'], ['Rows'], ['SHA-256']],
            imports.map(({ file, sheet, time, rows, hash }) => [file, sheet, time.slice(0, 10), rows, hash]),
          ),
        ]
      : []),
    ...(named.length > 0
      ? [
          table(
            `${count('Table')} Settings: values that formulas use by name.`,
            [['Name'], ['Value', true], ['Unit'], ['Note']],
            named.map(({ name, display, unit, note }) => [name, display, unit, note]),
          ),
        ]
      : []),
    ...paragraphs(
      doubts.open === 0
        ? 'Checks has no open entry.'
        : `Checks has ${doubts.open} open ${doubts.open === 1 ? 'entry' : 'entries'}: not fixed, and not accepted with a reason.`,
    ),
    ...(doubts.accepted.length > 0
      ? [
          table(
            `${count('Table')} Entries of Checks that were reviewed and accepted.`,
            [['Entry'], ['Reason']],
            doubts.accepted.map(({ sentence, reason }) => [sentence, reason]),
          ),
        ]
      : []),
  ];
}

function sentences({
  version,
  book,
  on,
  reliability,
  described,
  chosen,
  figures,
}: CohortReport): readonly string[] {
  const { form, formFrom, confidenceFrom } = chosen;
  const percent = percentOf(chosen);
  const from = (name: string | null): string =>
    name === null ? 'the report’s setting' : `the book’s setting ${name}`;
  return [
    `All values were computed on ${on} with Leverbook ${version} from the book “${book}”. Lengths are stored in cm, masses in kg, angles in degrees; other units are converted on import and for display.`,
    ...(reliability.length > 0
      ? [
          `Reliability: rows with every trial only. Intraclass correlation of form ${form} (${from(formFrom)}; Shrout & Fleiss 1979, Psychol Bull 86:420–428) with its interval (McGraw & Wong 1996, Psychol Methods 1:30–46). Confidence level of intervals, minimal detectable change and limits: ${percent} (${from(confidenceFrom)}). Standard error of measurement (Weir 2005, J Strength Cond Res 19:231–240) in two ways. Consistency: the root of the residual mean square of the two-way analysis of variance, for two trials the SD of the differences divided by √2. ${form[0] === '3' ? 'From the ICC' : 'Agreement'}: SD · √(1 − ICC), the SD being of ${form.endsWith('k') ? 'the row means' : 'all values'} of the same rows. Minimal detectable change: z · √2 · SEM. Bias and limits of agreement: Bland & Altman 1986, Lancet 1:307–310.`,
        ]
      : []),
    ...(described.length > 0
      ? [
          'Standard deviations have the divisor n − 1; percentiles interpolate linearly (type 7 of Hyndman & Fan 1996, Am Stat 50:361–365).',
        ]
      : []),
    ...(figures.some(({ kind }) => kind === 'scatter')
      ? ['Lines in figures are least-squares lines, bands are 95 % prediction intervals.']
      : []),
    'The functions in use, with their rules, sources and evidence levels, are at the end.',
  ];
}

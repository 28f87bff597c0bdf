import type { Shape } from '../drawing/shape.ts';
import { paragraphs, table } from './parts.ts';
import type { CohortReport } from './report.ts';

/** How the numbers came about: the authors' words, then what the program knows. */
export function methodsOf(report: CohortReport, count: (of: 'Table') => string): readonly Shape[] {
  const { sheets, imports, named, doubts, methods } = report;
  const hidden = sheets.filter(({ rows, shown }) => shown < rows);
  return [
    ...(methods === null ? [] : paragraphs(methods)),
    ...paragraphs(sentences(report).join(' ')),
    table(
      `${count('Table')} The sheets of the book.`,
      [['Sheet'], ['Holds'], ['Rows', true], ['Rows counted', true]],
      sheets.map(({ label, purpose, rows, shown }) => [label, purpose, String(rows), String(shown)]),
    ),
    ...(hidden.length > 0
      ? paragraphs('Rows that a sheet’s filter hides are not counted in tables and figures of this report.')
      : []),
    ...(imports.length > 0
      ? [
          table(
            `${count('Table')} Files that the rows came from, with the SHA-256 of each.`,
            [['File'], ['Sheet'], ['Taken in'], ['Rows'], ['SHA-256']],
            imports.map(({ file, sheet, time, rows, hash }) => [file, sheet, time.slice(0, 10), rows, hash]),
          ),
        ]
      : []),
    ...(named.length > 0
      ? [
          table(
            `${count('Table')} Values that formulas use by name.`,
            [['Name'], ['Value', true], ['Note']],
            named.map(({ name, display, note }) => [name, display, note]),
          ),
        ]
      : []),
    ...paragraphs(
      doubts.open === 0
        ? 'The book holds no value that it doubts and nobody has looked at.'
        : `The book doubts ${doubts.open} ${doubts.open === 1 ? 'value or formula' : 'values or formulas'} that nobody has accepted or mended.`,
    ),
    ...(doubts.accepted.length > 0
      ? [
          table(
            `${count('Table')} Doubts that somebody has looked at and accepted.`,
            [['Doubt'], ['Reason']],
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
  confidence,
  figures,
}: CohortReport): readonly string[] {
  const percent = `${Math.round(confidence * 1000) / 10} %`;
  const forms = [...new Set(reliability.map(({ form }) => form))];
  return [
    `All values were computed on ${on} with Leverbook ${version} from the book “${book}”. Lengths are kept in cm, masses in kg, angles in degrees; other units are converted on the way in and out.`,
    ...(reliability.length > 0
      ? [
          `Reliability: rows with every trial only. Intraclass correlation of ${forms.length === 1 ? `form ${forms[0]}` : `forms ${forms.join(' and ')}`} (Shrout & Fleiss 1979, Psychol Bull 86:420–428) with its ${percent} interval (McGraw & Wong 1996, Psychol Methods 1:30–46). Standard error of measurement: the root of the residual mean square of the two-way analysis of variance (Weir 2005, J Strength Cond Res 19:231–240), for two trials the SD of the differences divided by √2. Minimal detectable change: z · √2 · SEM. Bias and limits of agreement: Bland & Altman 1986, Lancet 1:307–310.`,
        ]
      : []),
    ...(described.length > 0
      ? [
          'Standard deviations have the divisor n − 1; percentiles interpolate linearly (type 7 of Hyndman & Fan 1996, Am Stat 50:361–365).',
        ]
      : []),
    ...(figures.some(({ kind }) => kind === 'scatter')
      ? ['Lines in figures are least-squares lines, bands the 95 % interval for a new value.']
      : []),
    'The functions in use, with their rules and sources and how well each is known, stand at the end.',
  ];
}

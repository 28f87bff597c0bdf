/** How a text table is written: which marks part its cells, which quote them. */
import type { Choices, Delimiter, Finding, LineEnd, Quote } from '../api.ts';
import { markUse } from '../cells/index.ts';
import { note } from '../sentences/index.ts';
import { oneLineEnd } from './line-ends.ts';
import { type Dialect, parseText } from './parse.ts';

export interface DialectFindings {
  readonly delimiter: Finding<Delimiter>;
  readonly quote: Finding<Quote>;
  readonly lineEnd: LineEnd;
  /** The first line names the delimiter and is no row ("sep=;"). */
  readonly saidInFirstLine: boolean;
  readonly dialect: Dialect;
}

const delimiters: readonly Delimiter[] = [',', ';', '\t', '|'];
const SAID = /^"?sep=(.)"?(?:\n|$)/i;
const LINES = 200;

/** Finds how the beginning of a file is divided into rows and cells. */
export function findDialect(head: string, choices: Choices): DialectFindings {
  const lineEnd = lineEndOf(head);
  const text = firstLines(oneLineEnd(head), LINES);
  const quote = findQuote(text, choices.quote);
  const said = SAID.exec(text);
  const saidInFirstLine = said !== null && delimiters.includes(said[1] as Delimiter);
  const delimiter = ((): Finding<Delimiter> => {
    if (choices.delimiter !== undefined)
      return { value: choices.delimiter, certainty: 'sure', because: note('chosen') };
    if (saidInFirstLine)
      return {
        value: said[1] as Delimiter,
        certainty: 'sure',
        because: note('said-by-file', { line: said[0].trim() }),
        others: delimiters,
      };
    return guessDelimiter(text, quote.value);
  })();
  return {
    delimiter,
    quote,
    lineEnd,
    saidInFirstLine,
    dialect: { delimiter: delimiter.value, quote: quote.value },
  };
}

function lineEndOf(text: string): LineEnd {
  const pairs = text.match(/\r\n/g)?.length ?? 0;
  const feeds = (text.match(/\n/g)?.length ?? 0) - pairs;
  const returns = (text.match(/\r/g)?.length ?? 0) - pairs;
  if (pairs > 0 && feeds === 0) return '\r\n';
  if (feeds > 0 && pairs === 0) return '\n';
  if (pairs === 0 && feeds === 0) return returns > 0 ? '\r' : '\n';
  return 'mixed';
}

function firstLines(text: string, count: number): string {
  let at = -1;
  for (let i = 0; i < count; i++) {
    at = text.indexOf('\n', at + 1);
    if (at < 0) return text;
  }
  return text.slice(0, at + 1);
}

function findQuote(text: string, chosen: Quote | undefined): Finding<Quote> {
  if (chosen !== undefined) return { value: chosen, certainty: 'sure', because: note('chosen') };
  const count = (quote: string): number =>
    text.match(
      new RegExp(`(?:^|[,;\\t|])[ ]?${quote}[^${quote}\\n\\r]*${quote}(?=[ ]?(?:[,;\\t|]|\\r|\\n|$))`, 'gm'),
    )?.length ?? 0;
  const double = count('"');
  const single = count("'");
  if (double >= single)
    return {
      value: '"',
      certainty: double > 0 ? 'sure' : 'likely',
      because: double > 0 ? note('quotes-seen', { count: double, mark: '"' }) : note('no-quotes'),
      others: ["'", ''],
    };
  return {
    value: "'",
    certainty: 'likely',
    because: note('quotes-seen', { count: single, mark: "'" }),
    others: ['"', ''],
  };
}

interface Trial {
  readonly delimiter: Delimiter;
  readonly fields: number;
  readonly matching: number;
  readonly rows: number;
  readonly score: number;
}

/** Tries each delimiter: the one that splits most lines into equally many clean cells. */
function guessDelimiter(text: string, quote: Quote): Finding<Delimiter> {
  const trials = delimiters
    .map((delimiter) => tryDelimiter(text, { quote, delimiter }))
    .sort((a, b) => b.score - a.score);
  const [best, second] = trials as [Trial, Trial];
  if (best.score === 0)
    return { value: ',', certainty: 'likely', because: note('one-column'), others: delimiters };
  const clear = second.score < 0.6 * best.score;
  return {
    value: best.delimiter,
    certainty: clear ? (best.matching >= 0.8 * best.rows ? 'sure' : 'likely') : 'doubtful',
    because: note('consistent-fields', {
      mark: best.delimiter,
      matching: best.matching,
      rows: best.rows,
      fields: best.fields,
    }),
    others: delimiters.filter((d) => d !== best.delimiter),
  };
}

function tryDelimiter(text: string, dialect: Dialect): Trial {
  const { delimiter } = dialect;
  const rows = parseText(text, dialect).filter((row) => row.some((cell) => cell.trim() !== ''));
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  counts.delete(1);
  let fields = 0;
  let matching = 0;
  // Of equally frequent widths the larger: preamble lines are narrow.
  for (const [width, count] of counts)
    if (count > matching || (count === matching && width > fields)) {
      fields = width;
      matching = count;
    }
  if (fields < 2) return { delimiter, fields: 1, matching: 0, rows: rows.length, score: 0 };
  let clean = 0;
  let cells = 0;
  for (const row of rows.slice(0, 60))
    if (row.length === fields)
      for (const cell of row) {
        cells++;
        if (isClean(cell.trim())) clean++;
      }
  const share = matching / rows.length;
  const tidy = clean / cells;
  const score = share * share * tidy * tidy * (1 - 0.5 / fields);
  return { delimiter, fields, matching, rows: rows.length, score };
}

/** A cell that a wrong delimiter would hardly leave: one value without another delimiter inside. */
const isClean = (cell: string): boolean =>
  !/[;\t|,]/.test(cell) || markUse(cell) !== 'none' || /[\p{L}.] ?, ?\p{L}/u.test(cell);

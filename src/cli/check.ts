import { basename } from 'node:path';
import {
  type ColumnFinding,
  type Finding,
  type Findings,
  IntakeRefusal,
  inspecting,
  type Note,
  preparing,
  sentence,
} from '../intake/index.ts';
import type { Place } from '../session/api.ts';
import { underHeadings } from '../session/checks/kind-words.ts';
import type { Session } from '../session/session.ts';
import { Refusal } from './exit.ts';
import { readBytes } from './files.ts';
import { print } from './print.ts';
import { openBook } from './printed.ts';
import { runTelling, Telling } from './progress.ts';

/** Says how a file would be read, each finding with its evidence, or what is to be checked in a book. Nothing is written. */
export async function checkCommand(path: string, options: { json?: boolean }): Promise<void> {
  if (/\.json$/i.test(path)) {
    const session = await openBook(path);
    print(options.json ? JSON.stringify(session.doubts(), null, 2) : checksInWords(path, session));
    return;
  }
  const bytes = readBytes(path, 'a CSV, XLSX or ODS file');
  try {
    const name = basename(path);
    const table = await runTelling(await preparing(bytes, { name }), new Telling());
    const findings = await runTelling(
      inspecting(table.bytes, { ...table.options, name, now: new Date().toISOString() }),
      new Telling(),
    );
    print(options.json ? JSON.stringify(withSentences(findings), null, 2) : inWords(findings));
  } catch (error) {
    if (error instanceof IntakeRefusal) throw new Refusal(`${path}: ${error.message}`);
    throw error;
  }
}

/** What is to be checked in a book, under headings with counts; what was accepted with a reason is counted alone. */
function checksInWords(path: string, session: Session): string {
  const doubts = session.doubts();
  const waiting = doubts.filter(({ accepted }) => !accepted);
  const accepted = doubts.length - waiting.length;
  const { sheets } = session.outline();
  const where = ({ sheet, column, row }: Place): string => {
    const of = sheets.find(({ id }) => id === sheet);
    const label = of?.columns.find(({ id }) => id === column)?.label ?? column;
    return `${of?.label ?? sheet}, ${label}${row === undefined ? '' : `, row ${row + 1}`}`;
  };
  return [
    `${basename(path)}: ${waiting.length} to check${accepted > 0 ? `, ${accepted} accepted` : ''}`,
    ...underHeadings(waiting).flatMap(({ about, heading, items }) => [
      '',
      `${heading}: ${items.length}`,
      ...items.map(
        ({ place, sentence, results }) =>
          `  ${where(place)}: ${sentence}${about === 'error' && results ? ` ${results} results have this cause.` : ''}`,
      ),
    ]),
  ].join('\n');
}

/** Findings as they are, every note with its sentence. */
function withSentences(findings: Findings): unknown {
  return JSON.parse(
    JSON.stringify(findings, (_, value: unknown) =>
      isNote(value) ? { ...value, sentence: sentence(value) } : value,
    ),
  );
}

const isNote = (value: unknown): value is Note =>
  typeof value === 'object' &&
  value !== null &&
  'reason' in value &&
  'details' in value &&
  !('sentence' in value);

const marks: Record<string, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  '"': 'double',
  "'": 'single',
  '': 'none',
};

const certainties = { sure: 'sure', likely: 'likely', doubtful: 'to check' } as const;

const lines = (n: number): string => (n === 1 ? '1 line' : `${n} lines`);

function inWords(f: Findings): string {
  const line = (what: string, value: string, finding: Finding<unknown>) =>
    `  ${what.padEnd(12)}${value}${finding.certainty === 'sure' ? '' : ` (${certainties[finding.certainty]})`}: ${sentence(finding.because)}`;
  return [
    `${f.name}: ${f.size} bytes, ${f.partial ? 'about ' : ''}${f.rows} rows, ${f.columns.length} columns`,
    ...(f.workbook
      ? [`  table       ${f.workbook.table}, of the tables ${f.workbook.tables.join(', ')}`]
      : [
          line(
            'encoding',
            `${f.encoding.value}${f.byteOrderMark ? ' with byte order mark' : ''}`,
            f.encoding,
          ),
          line('delimiter', marks[f.delimiter.value] ?? f.delimiter.value, f.delimiter),
          line('quotes', marks[f.quote.value] ?? f.quote.value, f.quote),
        ]),
    line('preamble', lines(f.preamble.value), f.preamble),
    line('headings', lines(f.headingLines.value), f.headingLines),
    line('footer', lines(f.footer.value), f.footer),
    '',
    'Columns',
    ...f.columns.map(columnInWords),
    ...(f.notes.length > 0 ? ['', 'Notes', ...f.notes.map((n) => `  ${sentence(n)}`)] : []),
  ].join('\n');
}

function columnInWords(c: ColumnFinding): string {
  const unit = c.unit.value === null ? '' : `, ${c.unit.value}`;
  const unfit = c.unfit > 0 ? `, ${c.unfit} do not fit` : '';
  const doubt = c.kind.certainty === 'doubtful' ? ` (to check: ${sentence(c.kind.because)})` : '';
  const order = c.dateOrder?.certainty === 'doubtful' ? ` ${sentence(c.dateOrder.because)}` : '';
  return `  ${c.heading}: ${c.kind.value}${unit}; ${c.filled} filled, ${c.blank} blank${unfit}; such as ${c.examples.slice(0, 3).join(' · ')}${doubt}${order}`;
}

import type { FileFindings, FileReading } from '../../session/imports/file-reading.ts';

/** Choices for how a file is read, with the words for them. */
export const encodings: readonly (readonly [value: string, words: string])[] = [
  ['utf-8', 'UTF-8'],
  ['windows-1252', 'Windows-1252 (Western Europe)'],
  ['iso-8859-1', 'ISO-8859-1 (Western Europe)'],
  ['iso-8859-2', 'ISO-8859-2 (Central Europe)'],
  ['windows-1250', 'Windows-1250 (Central Europe)'],
  ['utf-16le', 'UTF-16, low byte first'],
  ['utf-16be', 'UTF-16, high byte first'],
  ['utf-32le', 'UTF-32, low byte first'],
  ['utf-32be', 'UTF-32, high byte first'],
];
export const delimiters: readonly (readonly [string, string])[] = [
  [',', 'comma'],
  [';', 'semicolon'],
  ['\t', 'tab'],
  ['|', 'vertical bar'],
];
export const quotes: readonly (readonly [string, string])[] = [
  ['"', 'double quotes "'],
  ["'", "single quotes '"],
  ['', 'none'],
];
export const dateOrders: readonly (readonly [string, string])[] = [
  ['dmy', 'day, month, year'],
  ['mdy', 'month, day, year'],
  ['ymd', 'year, month, day'],
];
export const decimalMarks: readonly (readonly [string, string])[] = [
  ['.', 'a point: 1.5'],
  [',', 'a comma: 1,5'],
];
export const clocks: readonly (readonly [string, string])[] = [
  ['h:mm', 'hours and minutes'],
  ['m:ss', 'minutes and seconds'],
];
export const kinds: readonly (readonly [string, string])[] = [
  ['number', 'number'],
  ['text', 'text'],
  ['date', 'date'],
  ['yes-no', 'yes or no'],
];

/** With what was found among the choices, though it is not one of the usual. */
export const withFound = (
  list: readonly (readonly [string, string])[],
  value: string,
): readonly (readonly [string, string])[] =>
  list.some(([one]) => one === value) ? list : [...list, [value, value]];

export const rowsInWords = (count: number): string =>
  `${count.toLocaleString('en')} ${count === 1 ? 'row' : 'rows'}`;
export const cellsInWords = (count: number): string =>
  `${count.toLocaleString('en')} ${count === 1 ? 'cell' : 'cells'}`;

/** What importing would change in the sheet, counted. */
export function importInWords({ rows, mode }: Pick<FileReading, 'rows' | 'mode'>, sheetRows: number): string {
  if (mode === 'replace' && sheetRows > 0)
    return `Replace ${rowsInWords(sheetRows)} with ${rows.added.toLocaleString('en')}`;
  const { added, updated } = rows;
  if (added > 0 && updated > 0) return `Add ${rowsInWords(added)}, update ${updated.toLocaleString('en')}`;
  if (added > 0) return `Add ${rowsInWords(added)}`;
  return updated > 0 ? `Update ${rowsInWords(updated)}` : 'Import: nothing new';
}

/** The verdict on a file in one line: "24 of 24 rows, 2 cells to fix". */
export function verdictOf({ rows, cells }: Pick<FileReading, 'rows' | 'cells'>): string {
  const { held: cellsLeft } = cells;
  const parts = [
    rows.held > 0 ? `${rowsInWords(rows.held)} to fix` : '',
    cellsLeft > 0 ? `${cellsInWords(cellsLeft)} to fix` : '',
  ].filter(Boolean);
  const fix = parts.length > 0 ? parts.join(', ') : 'nothing to fix';
  return `${rows.placed.toLocaleString('en')} of ${rowsInWords(rows.in)}, ${fix}`;
}

/** Share of cells or rows from which on the way a file is read is rather wrong than its cells. */
const MANY = 0.2;

/** So much cannot be read that the file may be read in a wrong way. */
export const isMuchUnreadable = ({
  rows,
  cells,
  columns,
}: Pick<FileReading, 'rows' | 'cells' | 'columns'>): boolean =>
  cells.held > MANY * (cells.filled + cells.held) ||
  rows.held > MANY * rows.in ||
  columns.some(({ filled, held }) => held >= 5 && held > filled);

/** What came of the rows: imported, and not. */
export function countsOf(
  { rows, cells, differing }: Pick<FileReading, 'rows' | 'cells'> & Partial<Pick<FileReading, 'differing'>>,
  done = true,
): string {
  const n = (count: number) => count.toLocaleString('en');
  const parts = [
    rows.added > 0 ? `${n(rows.added)} new` : '',
    rows.updated > 0 ? `${n(rows.updated)} updated` : '',
    rows.unchanged > 0 ? `${n(rows.unchanged)} already there` : '',
  ].filter(Boolean);
  if (rows.left > 0)
    parts.push(
      `${n(rows.left)} ${rows.left === 1 ? 'differs' : 'differ'} from the rows there: ${differing?.decided === null ? 'not decided yet' : 'the sheet keeps its values'}`,
    );
  const placed = parts.length > 0 ? ` (${parts.join(', ')})` : '';
  const not = rows.held > 0 ? `; ${rowsInWords(rows.held)} not imported` : '';
  const unreadable = cells.held > 0 ? `; ${cellsInWords(cells.held)} unreadable` : '';
  return `${n(rows.placed)} of ${rowsInWords(rows.in)} ${done ? 'imported' : 'to import'}${placed}${not}${unreadable}`;
}

export const sizeInWords = (bytes: number): string =>
  bytes >= 1e6
    ? `${(bytes / 1e6).toFixed(1)} MB`
    : bytes >= 1e3
      ? `${(bytes / 1e3).toFixed(1)} kB`
      : `${bytes} bytes`;

export const isAnythingDoubtful = (findings: FileFindings): boolean =>
  Object.values(findings).some(({ doubtful }) => doubtful);

/** Finds where the heading is, and where the rows begin. */
import type { Choices, Finding } from '../api.ts';
import { durationUse, markUse, readDateForms } from '../cells/index.ts';
import { note } from '../sentences/index.ts';
import { LONGEST_VALUE, missingWords } from '../words.ts';
import { isUnitCell, unitCellWord } from './heading.ts';

export interface LayoutFindings {
  readonly preamble: Finding<number>;
  readonly headingLines: Finding<number>;
  readonly unitsLine: Finding<boolean>;
  /** The headings, both lines together, as many as there are columns. */
  readonly headings: readonly string[];
  /** Words of the line of units, by column; null without one. */
  readonly units: readonly (string | null)[] | null;
  /** Records before the first row of data. */
  readonly skip: number;
}

const missing = new Set(missingWords);
export const isBlank = (cell: string): boolean => cell.trim() === '';
/** Cells that hold something. */
export const filledOf = (row: readonly string[]): number =>
  row.reduce((n, cell) => n + (isBlank(cell) ? 0 : 1), 0);

/** A number, a date, a duration or a word for a missing value: what data are made of and headings hardly are. */
function isValue(cell: string): boolean {
  const text = cell.trim();
  if (text === '' || text.length > LONGEST_VALUE) return false;
  return (
    markUse(text) !== 'none' ||
    missing.has(text.toLowerCase()) ||
    readDateForms(text) !== null ||
    durationUse(text) !== null ||
    /^[+-]?[\d.,]+\s*(%|°|\p{L}{1,3})$/u.test(text)
  );
}

/** Finds where the table begins in the first records of a file. */
export function findLayout(
  rows: readonly (readonly string[])[],
  choices: Choices,
  said: boolean,
): LayoutFindings {
  const width = usualWidth(rows);
  const first = findFirst(rows, width, choices, said);
  const chosen = choices.headingLines;
  const head = rows[first.value] ?? [];
  const hasHeadings = chosen !== undefined ? chosen > 0 : looksLikeHeadings(rows, first.value, width);
  const two =
    hasHeadings &&
    (chosen !== undefined
      ? chosen > 1
      : looksLikeSecondHeading(head, rows[first.value + 1], rows.slice(first.value + 2)));
  const lines = hasHeadings ? (two ? 2 : 1) : 0;
  const unitsRow = rows[first.value + lines];
  const unitsLine = findUnitsLine(unitsRow, lines, rows[first.value + lines + 1], choices);
  const headings = headingsOf(head, two ? rows[first.value + 1]! : null, lines, width);
  return {
    preamble: first,
    headingLines: {
      value: lines,
      certainty: chosen !== undefined ? 'sure' : lines > 0 ? 'likely' : 'doubtful',
      because: note(
        chosen !== undefined
          ? 'chosen'
          : lines === 0
            ? 'no-headings'
            : lines === 2
              ? 'two-headings'
              : 'one-heading',
      ),
      others: [0, 1, 2].filter((n) => n !== lines),
    },
    unitsLine,
    headings,
    units: unitsLine.value ? headings.map((_, i) => unitCellWord(unitsRow?.[i] ?? '')) : null,
    skip: first.value + lines + (unitsLine.value ? 1 : 0),
  };
}

/** The most frequent number of cells in a record; of equally frequent ones the largest. */
function usualWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (filledOf(row) > 0) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  let width = 1;
  let most = 0;
  for (const [w, count] of counts)
    if (count > most || (count === most && w > width)) {
      width = w;
      most = count;
    }
  return width;
}

/** The record of the headings: the first that is as wide and as full as the rows. */
function findFirst(
  rows: readonly (readonly string[])[],
  width: number,
  choices: Choices,
  said: boolean,
): Finding<number> {
  if (choices.preamble !== undefined)
    return { value: choices.preamble, certainty: 'sure', because: note('chosen') };
  const fills = rows.filter((row) => row.length === width).map(filledOf);
  const usual = fills.sort((a, b) => a - b)[Math.floor(fills.length / 2)] ?? 1;
  const wanted = Math.max(width > 1 ? 2 : 1, Math.ceil(0.6 * usual));
  let found = rows.findIndex(
    (row, i) => !(said && i === 0) && row.length >= width && filledOf(row) >= wanted,
  );
  if (found < 0)
    found = Math.max(
      rows.findIndex((row, i) => !(said && i === 0) && filledOf(row) > 0),
      0,
    );
  // A line that is wider than the table, above one that names its columns, belongs to a letterhead.
  const [head, next, row] = rows.slice(found, found + 3);
  if (
    head &&
    next &&
    row?.some(isValue) &&
    head.length > width &&
    !isBlank(head[width] ?? '') &&
    next.length === width &&
    filledOf(next) === width &&
    !next.some(isValue)
  )
    found++;
  // A sparse line straight above a full line of texts is the upper of two heading lines.
  const above = rows[found - 1];
  if (
    above &&
    !(said && found === 1) &&
    above.length >= width &&
    filledOf(above) >= 2 &&
    !above.some(isValue) &&
    !(rows[found] ?? []).some(isValue)
  )
    found--;
  return {
    value: found,
    certainty: found === 0 ? 'sure' : 'likely',
    because: found === 0 ? note('no-preamble') : note('first-full-line', { line: found + 1 }),
  };
}

/** Headings are texts that differ; the rows below hold values, or at least other texts. */
function looksLikeHeadings(rows: readonly (readonly string[])[], first: number, width: number): boolean {
  const head = rows[first] ?? [];
  const same = (row: readonly string[]): boolean => row.every((cell, i) => cell.trim() === head[i]?.trim());
  const body = rows.slice(first + 1, first + 30).filter((row) => row.length === width && !same(row));
  const values = head.filter(isValue).length;
  const filled = filledOf(head);
  if (values === 0) {
    // All texts, as in a list of names and groups: a first line whose words come again below is a row.
    const again = head.filter(
      (cell, i) =>
        !isBlank(cell) && body.some((row) => row[i]?.trim().toLowerCase() === cell.trim().toLowerCase()),
    ).length;
    return again === 0 || body.some((row) => row.some(isValue)) ? again <= filled / 2 : false;
  }
  // Wide tables have dates or set numbers for headings; then the first column is a text and the line has no twin.
  const first_ = head[0] ?? '';
  const bodyValues = body.map((row) => row.filter(isValue).length).sort((a, b) => a - b);
  const usual = bodyValues[Math.floor(bodyValues.length / 2)] ?? 0;
  if (values < filled / 2 && values < usual) return true;
  const dates = head.slice(1).filter((cell) => readDateForms(cell) !== null).length;
  const bodyDates = body[0]?.slice(1).filter((cell) => readDateForms(cell) !== null).length ?? 0;
  return !isValue(first_) && dates >= 2 && dates > bodyDates;
}

/** The lower heading line: texts again, under an upper line with gaps, and values below. */
function looksLikeSecondHeading(
  head: readonly string[],
  second: readonly string[] | undefined,
  below: readonly (readonly string[])[],
): boolean {
  // A line of units and blank lines may come before the first row.
  const third = below.find((row) => filledOf(row) > 0 && !isUnitsLine(row));
  if (!second || !third || second.some(isValue) || second.every(isUnitCell)) return false;
  const gaps = head.some((cell, i) => isBlank(cell) && !isBlank(second[i] ?? ''));
  const repeats = new Set(head.map((cell) => cell.trim().toLowerCase())).size < head.length;
  return (gaps || repeats) && filledOf(second) >= 2 && third.some(isValue);
}

const isUnitsLine = (row: readonly string[]): boolean =>
  row.every(isUnitCell) && row.some((cell) => unitCellWord(cell) !== null);

function findUnitsLine(
  row: readonly string[] | undefined,
  lines: number,
  next: readonly string[] | undefined,
  choices: Choices,
): Finding<boolean> {
  if (choices.unitsLine !== undefined)
    return { value: choices.unitsLine, certainty: 'sure', because: note('chosen') };
  const words = row?.filter((cell) => unitCellWord(cell) !== null) ?? [];
  const is = lines > 0 && next !== undefined && row !== undefined && isUnitsLine(row);
  return {
    value: is,
    certainty: is && words.length === 1 ? 'likely' : 'sure',
    because: is ? note('units-below', { example: words.slice(0, 3).join(', ') }) : note('no-units-below'),
    others: [!is],
  };
}

function headingsOf(
  head: readonly string[],
  second: readonly string[] | null,
  lines: number,
  width: number,
): string[] {
  const count = Math.max(lines > 0 ? head.length : 0, second?.length ?? 0, width);
  const out: string[] = [];
  let group = '';
  for (let i = 0; i < count; i++) {
    const upper = (head[i] ?? '').replace(/\s+/g, ' ').trim();
    if (lines === 0) out.push('');
    else if (!second) out.push(upper);
    else {
      const lower = (second[i] ?? '').replace(/\s+/g, ' ').trim();
      if (upper !== '') group = upper;
      // A gap in the upper line belongs to the group on its left, if there is something below.
      out.push(lower === '' ? upper : group === '' ? lower : `${group} ${lower}`);
    }
  }
  // Headings end where nothing more is named and no row is wider.
  while (out.length > width && out.at(-1) === '') out.pop();
  return out;
}

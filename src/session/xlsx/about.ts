/** The sheet of a workbook file that says what its columns are. */
import * as say from '../../../functions/tables/sources.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { isoFromSerial } from '../../units/date.ts';
import { unitWords } from '../../units/sign.ts';
import type { Fate } from './fate.ts';

interface About {
  readonly book: Book;
  /** Sheets' names in the file, by id. */
  readonly named: ReadonlyMap<string, string>;
  readonly fates: readonly Fate[];
  readonly held: readonly { readonly sheet: Sheet; readonly count: number }[];
  readonly defined: ReadonlySet<string>;
  readonly now: Date;
}

/** The last sheet of a workbook file: what the columns are, and what became of the formulas. */
export function aboutRows({ book, named, fates, held, defined, now }: About): readonly (readonly string[])[] {
  const day = isoFromSerial(Math.floor(now.getTime() / 86_400_000) + 25_569);
  const kept = fates.some(({ no }) => !no);
  const lost = fates.some(({ no }) => no);
  const lines = [
    `The book “${book.title}”, written by Leverbook on ${day}.`,
    ...(kept
      ? ['Formulas of built-in functions are formulas here, and follow what is changed in this file.']
      : []),
    ...(lost
      ? [
          'Other formulas, such as those of Leverbook’s own functions, are the values of that day and do not follow changes. To compute them again, change the book and export it again.',
        ]
      : []),
    'Numbers are in the unit of their heading. Charts, handouts, filters and where rows came from stay in the book.',
    ...held.map(
      ({ sheet, count }) =>
        `${named.get(sheet.id)}: ${count === 1 ? 'one cell is' : `${count} cells are`} unreadable: text in place of a number or a date, as it came.`,
    ),
    say.modelCaution,
    say.painCaution,
  ];
  const columns = book.sheets.flatMap((sheet) =>
    sheet.columns.map((column) => [
      named.get(sheet.id)!,
      column.label || column.name,
      column.name,
      unitText(column),
      column.formula ?? '',
      column.formula === undefined
        ? ''
        : fateText(fates.find((fate) => fate.column === column && fate.row === undefined)),
      column.note ?? '',
    ]),
  );
  const cells = fates
    .filter(({ row }) => row !== undefined)
    .slice(0, 2000)
    .map((fate) => [
      named.get(fate.sheet.id)!,
      `${fate.column.label || fate.column.name}, row ${fate.row! + 1}`,
      fate.column.name,
      unitText(fate.column),
      fate.formula,
      fateText(fate),
      '',
    ]);
  const names = [...book.names.values()].map(({ name, sheet, row, note }) => [
    named.get(sheet)!,
    `row ${row + 1}`,
    name,
    '',
    '',
    defined.has(name) ? 'a setting' : 'a setting; this file cannot have its name',
    note ?? '',
  ]);
  return [
    ...lines.map((line) => [line]),
    [''],
    ['Sheet', 'Column', 'Name in formulas', 'Unit', 'Formula in the book', 'Here', 'Note'],
    ...columns,
    ...cells,
    ...names,
  ];
}

const unitText = (column: Column): string => (column.kind === 'date' ? 'date' : unitWords(column));

function fateText(fate: Fate | undefined): string {
  if (!fate?.no) return 'formula';
  const { why, what } = fate.no;
  switch (why) {
    case 'own function':
      return `values: ${what} is a function of Leverbook`;
    case 'no such function':
      return `values: ${what} is not a function of every program`;
    case 'unit':
      return 'values: it reads a column that is shown in another unit than it is computed in';
    case 'shown in unit':
      return `values: it is shown in ${what}, and computed in another unit`;
    case 'array':
      return 'values: it works on whole columns at once';
    case 'spills':
      return 'values: its result fills several cells';
    case 'pattern':
      return `values: “${what}” would be read as a pattern`;
    case 'error':
      return 'values: it reads something that is no longer there';
  }
}

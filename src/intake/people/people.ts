/** Settles who the people of a file are, before its rows go into the sheet. */
import { type CellBlock, CellKind } from '../../book/cells.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { headingKey, synonymIndex, synonyms } from '../detect/index.ts';
import { recipe, type Who } from '../import-settings/index.ts';
import { cellWords, type Filled } from '../merge/index.ts';
import { type Note, note } from '../sentences/index.ts';
import { type Identity, type Person, type WhoReport, whoIsWho } from './who.ts';

const columnNamed = (sheet: Sheet, name: string) =>
  sheet.columns.find((column) => nameKey(column.name) === nameKey(name));

/** The people of a roster: what its columns say, row by row. */
function peopleOf(sheet: Sheet, who: Who): Person[] {
  const name = columnNamed(sheet, who.name);
  const cells = name && sheet.cells.get(name.id);
  if (!cells) return [];
  const also = (who.also ?? []).flatMap((other) => {
    const column = columnNamed(sheet, other);
    const block = column && sheet.cells.get(column.id);
    return block ? [block] : [];
  });
  const identity = identityIn(
    sheet.columns.map((column) => ({ column, cells: sheet.cells.get(column.id)! })),
    name,
  );
  return Array.from({ length: sheet.rows }, (_, row) => ({
    value: cellWords(cells, row),
    also: also.map((block) => cellWords(block, row)).filter((text) => text !== ''),
    identity: identity(row),
  })).filter((person) => person.value !== '');
}

/** Identifier and birth date of a row, from the columns that are called so. */
function identityIn(columns: readonly Filled[], named: Column): (row: number) => Identity {
  const find = (line: number | undefined): CellBlock | undefined =>
    columns.find(({ column }) => column.id !== named.id && linesOf(column).includes(line))?.cells;
  const ids = find(idLine);
  const births = find(birthLine);
  return (row) => {
    const id = ids ? cellWords(ids, row).trim().toLowerCase() : '';
    return {
      ...(id === '' ? {} : { id }),
      ...(births?.kinds[row] === CellKind.date ? { born: cellWords(births, row) } : {}),
    };
  };
}

/** What the rows of each text have in common. */
function identitiesOf(
  filled: readonly Filled[],
  named: Column,
  textAt: (row: number) => string | undefined,
  rows: number,
): ReadonlyMap<string, Identity> {
  const identity = identityIn(filled, named);
  const found = new Map<string, Identity>();
  for (let row = 0; row < rows; row++) {
    const text = textAt(row);
    if (text === undefined) continue;
    const own = identity(row);
    const known = found.get(text);
    if (!known) found.set(text, own);
    else if (known.id !== own.id || known.born !== own.born)
      found.set(text, {
        ...(known.id !== undefined && known.id === own.id ? { id: known.id } : {}),
        ...(known.born !== undefined && known.born === own.born ? { born: known.born } : {}),
      });
  }
  return found;
}

const index = synonymIndex(synonyms);
const athleteLine = index.get('athlete');
const idLine = index.get('id');
const birthLine = index.get('birth date');
const lineOf = (text: string): number | undefined => index.get(headingKey(text));
/** The lines of synonyms that a column stands in: by its name, its label and what it says it is. */
const linesOf = ({ name, label, role }: Column): readonly (number | undefined)[] =>
  [name, label, role ?? ''].map(lineOf);

/** A recipe of the book looks people up in this sheet. */
export const isRoster = (book: Book | undefined, { name }: Sheet): boolean =>
  [...(book?.parts.recipes.values() ?? [])].some((json) => {
    const read = recipe.safeParse(json);
    return read.success && read.data.who !== undefined && nameKey(read.data.who.roster) === nameKey(name);
  });

/** The column that names somebody, and the sheet that lists each person once; null where the book has none. */
export function guessWho(book: Book | undefined, target: Sheet, columns: readonly Filled[]): Who | null {
  const named = columns.find(({ column }) => column.kind === 'text' && linesOf(column).includes(athleteLine));
  if (!named || athleteLine === undefined) return null;
  for (const sheet of book?.sheets ?? []) {
    if (sheet.id === target.id || sheet.rows === 0 || sheet.purpose !== 'gathered') continue;
    const name = sheet.columns.find((c) => linesOf(c).includes(athleteLine));
    const cells = name && sheet.cells.get(name.id);
    if (!name || !cells) continue;
    const texts = Array.from({ length: sheet.rows }, (_, row) => cellWords(cells, row)).filter(
      (t) => t !== '',
    );
    // A roster lists everybody once; a log does not.
    if (texts.length === 0 || new Set(texts).size < texts.length) continue;
    const also = sheet.columns.filter((c) => linesOf(c).includes(idLine));
    return { column: named.column.name, roster: sheet.name, name: name.name, also: also.map((c) => c.name) };
  }
  return null;
}

/**
 * Gives the names of a column the roster's spelling where it is clear who is meant, and says who is not. The block's
 * texts are replaced; it has just been made here and nobody else holds it.
 */
export function settleWho(
  filled: Filled[],
  book: Book | undefined,
  who: Who,
  guessed: boolean,
): { report: WhoReport; notes: Note[] } | null {
  const at = filled.findIndex(({ column }) => nameKey(column.name) === nameKey(who.column));
  const sheet = book?.sheets.find((s) => nameKey(s.name) === nameKey(who.roster));
  const entry = filled[at];
  if (!entry || !sheet) return null;
  const { cells, column } = entry;
  const counts = new Map<string, number>();
  const textAt = (row: number): string | undefined =>
    cells.kinds[row] === CellKind.text
      ? cells.texts?.[row]
      : cells.kinds[row] === CellKind.number
        ? String(cells.numbers[row])
        : undefined;
  for (let row = 0; row < cells.length; row++) {
    const text = textAt(row);
    if (text !== undefined) counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  const identities = identitiesOf(filled, column, textAt, cells.length);
  const found = whoIsWho(counts, peopleOf(sheet, who), who.same, identities);
  // A sheet that was only guessed to be the roster must list most of them, else it is another group's.
  if (guessed && found.matched + found.close.length < 0.5 * counts.size) return null;
  if (found.rename.size > 0 && cells.texts)
    filled[at] = {
      column,
      cells: {
        ...cells,
        texts: cells.texts.map((text) => (text === undefined ? text : (found.rename.get(text) ?? text))),
      },
    };
  const { rename: _, ...rest } = found;
  const report: WhoReport = { ...rest, column: column.name, roster: sheet.name };
  return { report, notes: notesOf(report) };
}

const MOST_NOTES = 20;

function notesOf({ column, roster, same, close, unknown }: WhoReport): Note[] {
  const details = { heading: column, roster };
  return [
    ...same
      .slice(0, MOST_NOTES)
      .filter((s) => s.by !== 'spelling')
      .map(({ text, value, by, rows }) => note('who-same', { ...details, text, value, by, count: rows })),
    ...close.slice(0, MOST_NOTES).map(({ text, values, rows }) =>
      note('who-close', {
        ...details,
        text,
        values: values.map((v) => `"${v}"`).join(' or '),
        count: rows,
      }),
    ),
    ...(unknown.length === 0
      ? []
      : [
          note('who-unknown', {
            ...details,
            count: unknown.length,
            texts: `${unknown
              .slice(0, 5)
              .map((u) => `"${u.text}"`)
              .join(', ')}${unknown.length > 5 ? ` and ${unknown.length - 5} more` : ''}`,
          }),
        ]),
  ];
}

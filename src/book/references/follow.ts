import { findSheet, sheetNamed } from '../book.ts';
import type { Edit } from '../edit.ts';
import type { Book, Json, Sheet } from '../model.ts';
import { nameKey } from '../names.ts';
import type { BookChange } from './change.ts';
import { gone } from './gone.ts';
import { type AnyPart, asRecord, type BookPart, type References } from './part.ts';

/** A formula after a change; `home` is the id of the sheet that it is computed in, '' for none. */
export type FollowFormula = (formula: string, home: string) => string;

/** How formulas follow, and how those of a copy do, which mean the copy. */
export interface FollowFormulas {
  readonly formula: FollowFormula;
  readonly inCopy: FollowFormula;
}

/** What became of the parts of a book. */
export interface Followed {
  readonly edits: readonly Edit[];
  /** What the records are called that changed. */
  readonly words: readonly string[];
}

/** The edits that have every part of a book follow a change. A record that cannot be read is left as it is. */
export function followParts(
  book: Book,
  parts: readonly AnyPart[],
  change: BookChange,
  formulas: FollowFormulas,
): Followed {
  const edits: Edit[] = [];
  const words: string[] = [];
  const formula: References['formulas'] = (text, home) => formulas.formula(text, home ?? '');
  const put = (part: BookPart, key: string, value: Json | null): void => {
    edits.push({ do: 'set-part', part: part.part, key, value });
  };
  for (const loose of parts) {
    const part = loose as unknown as BookPart;
    for (const [key, value] of book.parts[part.part]) {
      if (part.key !== undefined && part.key !== key) continue;
      const leaves = part.bySheet && change.is === 'remove-sheet' && change.sheet === key;
      if (leaves) {
        put(part, key, null);
        continue;
      }
      const read = part.schema.safeParse(value);
      if (!read.success) continue;
      const after = part.references(read.data, visitor(book, change, formula, formulas.inCopy), key);
      if (!equal(after, read.data)) {
        put(part, key, after === null ? null : asRecord(after as object));
        if (!part.bySheet || change.is.startsWith('remove')) words.push(part.word);
      }
      if (part.bySheet && change.is === 'copy-sheet' && change.sheet === key) {
        const copy = part.references(read.data, copying(book, change, formulas.inCopy), key);
        if (copy) put(part, change.id, asRecord(copy as object));
      }
    }
  }
  return { edits, words };
}

const equal = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
const same = (a: string, b: string): boolean => nameKey(a) === nameKey(b);

/** What stands in a record after the change. */
function visitor(
  book: Book,
  change: BookChange,
  formulas: References['formulas'],
  inCopy: FollowFormula,
): References {
  const sheet = 'sheet' in change ? findSheet(book, change.sheet) : undefined;
  const column = 'column' in change ? sheet?.columns.find(({ id }) => id === change.column) : undefined;
  const goes = (sheetId: string, id: string): boolean =>
    (change.is === 'remove-column' && change.sheet === sheetId && change.column === id) ||
    (change.is === 'remove-sheet' && change.sheet === sheetId);
  const stay = <T extends { readonly column: string }>(sheetId: string, list: readonly T[]): T[] =>
    list.filter((entry) => !goes(sheetId, entry.column));
  return {
    book,
    columns: {
      named: (of, name) => {
        if (!column || !sheet || of === undefined || !same(name, column.name) || !isSheet(book, sheet, of))
          return name;
        if (change.is === 'rename-column') return change.to;
        return change.is === 'remove-column' ? gone(column.name) : name;
      },
      ofId: (of, id) => (goes(of, id) ? undefined : id),
      own: (of, list, inside) => {
        const after = inside ? stay(of, list).map((entry) => inside(entry, formulas)) : stay(of, list);
        if (change.is !== 'copy-column' || change.sheet !== of) return after;
        const copies = list
          .filter((entry) => entry.column === change.column)
          .map((entry) => ({
            ...(inside ? inside(entry, (text, home) => inCopy(text, home ?? '')) : entry),
            column: change.id,
          }));
        return [...after, ...copies];
      },
      about: stay,
    },
    sheets: {
      ofId: (id) => (change.is === 'remove-sheet' && id === change.sheet ? gone(sheet?.name ?? id) : id),
      named: (name) => sheetName(change, sheet, name),
      either: (one) => {
        const isId = sheet?.id === one;
        if (isId) return change.is === 'remove-sheet' ? gone(sheet.name) : one;
        return sheetName(change, sheet, one);
      },
    },
    names: (name) => {
      if (change.is === 'rename-cell' && same(name, change.name)) return change.to;
      return change.is === 'remove-cell' && same(name, change.name) ? gone(name) : name;
    },
    formulas,
  };
}

function sheetName(change: BookChange, sheet: Sheet | undefined, name: string): string {
  if (!sheet || !same(name, sheet.name)) return name;
  if (change.is === 'rename-sheet') return change.to;
  return change.is === 'remove-sheet' ? gone(sheet.name) : name;
}

/** What stands in the copy of a record that belongs to a sheet. */
function copying(
  book: Book,
  { sheet, id }: Extract<BookChange, { is: 'copy-sheet' }>,
  inCopy: FollowFormula,
): References {
  const formulas: References['formulas'] = (text, home) => inCopy(text, home ?? '');
  const self = (one: string): string => (one === sheet ? id : one);
  return {
    book,
    columns: {
      named: (_, name) => name,
      ofId: (_, column) => column,
      own: (_, list, inside) => list.map((entry) => (inside ? inside(entry, formulas) : entry)),
      about: (_, list) => [...list],
    },
    sheets: { ofId: self, named: (name) => name, either: self },
    names: (name) => name,
    formulas,
  };
}

const isSheet = (book: Book, sheet: Sheet, said: string): boolean =>
  (findSheet(book, said) ?? sheetNamed(book, said))?.id === sheet.id;

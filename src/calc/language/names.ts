/** Which names columns, sheets and named cells may have, and the nearest known name. */
import { closest, distance } from 'fastest-levenshtein';
import type { Book, Sheet } from '../../book/model.ts';
import { nameKey, nameProblem, properName } from '../../book/names.ts';
import { isFunction } from '../catalogue.ts';

export type NameOf = 'column' | 'sheet' | 'named cell';

/** Whom a name is for; `self` is its present name, which does not count as taken. */
export interface NameFor {
  readonly what: NameOf;
  /** Id of the sheet of a column. */
  readonly sheet?: string;
  readonly self?: string;
}

/**
 * Why a name cannot be given, one sentence with a name that could; undefined when it can. A name that would mean two
 * things in some formula is refused here, so that a formula never has to guess.
 */
export function givenNameProblem(name: string, book: Book, whose: NameFor): string | undefined {
  const problem = nameProblem(name);
  if (problem) return problem;
  const because = clash(name, book, whose);
  if (!because) return undefined;
  const proposal = properName(name, (other) => clash(other, book, whose) !== undefined);
  return `${because} "${proposal}" would do.`;
}

function clash(name: string, book: Book, { what, sheet, self }: NameFor): string | undefined {
  const key = nameKey(name);
  if (self !== undefined && key === nameKey(self)) return undefined;
  // A sheet may be called log: before a dot it is no function, and a function is followed by a bracket.
  if (what !== 'sheet' && isFunction(name)) return `"${name}" is a function.`;
  const hasColumn = (s: Sheet): boolean => s.columns.some((c) => nameKey(c.name) === key);
  const hasNamedCell = [...book.names.keys()].some((n) => nameKey(n) === key);
  switch (what) {
    case 'sheet':
      return book.sheets.some((s) => nameKey(s.name) === key)
        ? `There is a sheet called "${name}" already.`
        : undefined;
    case 'column':
      if (book.sheets.some((s) => s.id === sheet && hasColumn(s)))
        return `This sheet has a column called "${name}" already.`;
      return hasNamedCell ? `A cell is named "${name}": the name would mean two things.` : undefined;
    case 'named cell': {
      if (hasNamedCell) return `A cell is named "${name}" already.`;
      const owner = book.sheets.find(hasColumn);
      return owner
        ? `The sheet "${owner.name}" has a column called "${name}": the name would mean two things.`
        : undefined;
    }
  }
}

/** The name among `known` that somebody who typed `name` may have meant, or undefined when none is near. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  const key = nameKey(name);
  const byKey = new Map(known.map((k) => [nameKey(k), k]));
  const best = closest(key, [...byKey.keys()]);
  const far = key.length < 4 ? 1 : key.length < 9 ? 2 : 3;
  return distance(key, best) <= far ? byKey.get(best) : undefined;
}

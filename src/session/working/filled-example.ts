/** Examples of built-in functions over the names of the open book. */
import type { Sheet } from '../../book/model.ts';
import type { Place } from '../../calc/api.ts';
import { numberText, quoted } from '../../calc/language/index.ts';
import type { ReadContext } from '../open-book.ts';

type Kind = 'number' | 'text' | 'date';
const kindOf = { n: 'number', N: 'number', t: 'text', T: 'text', d: 'date', D: 'date' } as const;

/** `{n}` this row's number, `{N}` its column, `{n2}` and `{N2}` those of a second column, `{n1}` the number itself; `t` and `d` alike. */
const PLACEHOLDER = /\{([nNtTdD])([12]?)\}/g;

/**
 * The example with names in the place of its placeholders: columns that have a value in the row, the first that fits for
 * each. Null where the sheet has none of a kind that is asked for.
 */
export function filledExample(
  { calculation }: ReadContext,
  example: string,
  sheet: Sheet,
  { row }: Required<Place>,
): string | null {
  const columns = (kind: Kind) =>
    sheet.columns.filter((column) => {
      if ((column.kind === 'choice' ? 'text' : column.kind) !== kind) return false;
      const value = calculation.value(sheet.id, column.id, row);
      return kind === 'text' ? typeof value === 'string' && value !== '' : typeof value === 'number';
    });
  let missing = false;
  const formula = example.replace(PLACEHOLDER, (_, letter: keyof typeof kindOf, which: string) => {
    const all = columns(kindOf[letter]);
    const column = which === '2' ? (all[1] ?? all[0]) : all[0];
    if (!column) {
      missing = true;
      return '';
    }
    if (which === '1') {
      const value = calculation.value(sheet.id, column.id, row);
      return typeof value === 'number' ? numberText(Math.round(value)) : quoted(String(value));
    }
    return letter === letter.toUpperCase() ? `${sheet.name}.${column.name}` : column.name;
  });
  return missing ? null : formula;
}

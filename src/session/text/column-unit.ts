import { Kind } from '../../../functions/core/value.ts';
import type { Column, Sheet } from '../../book/model.ts';
import type { Meaning } from '../../calc/api.ts';
import { signOf, type Unit, unitWords } from '../../units/sign.ts';
import type { ReadContext } from '../open-book.ts';

/** The unit of a column's numbers as its heading says it, or of each where they measure this and that. */
export interface ColumnUnit {
  /** Empty for plain numbers. */
  readonly all: string;
  /** Of a row's number, where rows differ; then `all` is empty. */
  readonly each?: ReadonlyMap<number, string>;
}

/**
 * The unit in which a column's numbers are written to a file: its own, else the base unit of what its formula gives, or
 * what its cells' own formulas and named cells say. Numbers of a column without a unit are never converted, so that a
 * file reads back as it was.
 */
export function columnUnit(context: ReadContext, sheet: Sheet, column: Column): ColumnUnit {
  if (column.kind !== 'number' || column.format?.percent) return { all: '' };
  const own = unitWords(measureOf(context, sheet.id, column));
  if (own !== '') return { all: own };
  const each = unitsOfCells(context, sheet, column);
  if (each.size === 0) return { all: '' };
  const { kinds } = context.calculation.column(sheet.id, column.id);
  const first = each.values().next().value!;
  for (let row = 0; row < sheet.rows; row++)
    if (kinds[row] === Kind.number && (each.get(row) ?? '') !== first) return { all: '', each };
  return { all: first };
}

/** The unit that a column says of all its numbers, or that its formula gives; empty where neither does. */
export const headingUnit = (
  context: Pick<ReadContext, 'calculation'>,
  sheet: string,
  column: Column,
): string => signOf(measureOf(context, sheet, column));

function measureOf({ calculation }: Pick<ReadContext, 'calculation'>, sheet: string, column: Column): Unit {
  if (column.kind !== 'number' || column.format?.percent) return {};
  const { dimension, unit, per } = column;
  return dimension || per ? { dimension, unit, per } : inBase(calculation.columnMeaning(sheet, column.id));
}

function unitsOfCells(
  { book, calculation }: ReadContext,
  sheet: Sheet,
  column: Column,
): ReadonlyMap<number, string> {
  const rows = new Set(sheet.cells.get(column.id)!.formulas.keys());
  for (const named of book.names.values())
    if (named.sheet === sheet.id && named.column === column.id) rows.add(named.row);
  const units = new Map<number, string>();
  for (const row of [...rows].sort((a, b) => a - b)) {
    const unit = unitWords(inBase(calculation.meaning(sheet.id, column.id, row)));
    if (unit !== '' && typeof calculation.value(sheet.id, column.id, row) === 'number') units.set(row, unit);
  }
  return units;
}

function inBase(meaning: Meaning | undefined): Unit {
  if (!meaning || meaning.is === 'date') return {};
  return { dimension: meaning.dimension, per: meaning.is === 'rate' ? meaning.per : undefined };
}

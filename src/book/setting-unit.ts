import type { Dimension, Per } from '../units/dimension.ts';
import type { Book, Column, NamedCell } from './model.ts';

/** What a named cell's number measures, and the unit it is shown in. */
export interface SettingUnit {
  readonly dimension?: Dimension;
  readonly unit?: string;
  readonly per?: Per;
}

/** True for a column whose numbers stand for nothing in particular: its named cells may have units of their own. */
export const takesUnits = ({ kind, dimension, per, format }: Column): boolean =>
  kind === 'number' && dimension === undefined && per === undefined && !format?.percent;

/** Rows of a column that have a name. */
export const namedRows = (book: Book, sheet: string, column: string): ReadonlyMap<number, NamedCell> =>
  new Map(
    [...book.names.values()]
      .filter((named) => named.sheet === sheet && named.column === column)
      .map((named) => [named.row, named]),
  );

/** The column as it is for one of its named cells: with the unit that was typed there. */
export function columnFor(column: Column, named: SettingUnit | undefined): Column {
  if (!named || !takesUnits(column)) return column;
  const { dimension, unit, per } = named;
  return { ...column, ...unitParts({ dimension, unit, per }) };
}

/** The same for a place. */
export const columnAt = (
  book: Book,
  { sheet, row }: { sheet: string; row: number },
  column: Column,
): Column => (takesUnits(column) ? columnFor(column, namedRows(book, sheet, column.id).get(row)) : column);

/** A named cell's place and words with another unit, or none. */
export function withUnit(
  { name: _, ...target }: NamedCell,
  unit: SettingUnit | null,
): Omit<NamedCell, 'name'> {
  const { dimension: __, unit: ___, per: ____, ...rest } = target;
  return unit ? { ...rest, ...unitParts(unit) } : rest;
}

const unitParts = ({
  dimension,
  unit,
  per,
}: {
  dimension?: Dimension | undefined;
  unit?: string | undefined;
  per?: Per | undefined;
}): SettingUnit => ({
  ...(dimension === undefined ? {} : { dimension }),
  ...(unit === undefined ? {} : { unit }),
  ...(per === undefined ? {} : { per }),
});

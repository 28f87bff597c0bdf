/** Reads what was typed into a named cell. */
import type { Cell } from '../../book/cells.ts';
import type { Column, NamedCell } from '../../book/model.ts';
import { columnFor, type SettingUnit, takesUnits } from '../../book/setting-unit.ts';
import type { Locale } from '../../units/locale.ts';
import { readMeasured } from '../../units/measured.ts';
import { readTyped } from './typed.ts';

interface Typed {
  readonly cell: Cell;
  /** The unit that the named cell has from now on; null for none. */
  readonly unit: SettingUnit | null;
}

/**
 * What a text makes of a named cell: in a column of plain numbers a unit typed behind the number (`42 cm`) is the cell's
 * from then on, and a number alone is in the unit that it has. A blank, a date or a formula takes the unit away.
 */
export function readSetting(
  text: string,
  column: Column,
  named: NamedCell,
  locale: Locale,
  formulas: boolean,
): Typed {
  const measured = takesUnits(column) ? readMeasured(text, locale) : undefined;
  if (measured) {
    const { value, ...unit } = measured;
    return { cell: value, unit };
  }
  const cell = readTyped(text, columnFor(column, named), locale, formulas, true);
  const { dimension, unit, per } = named;
  const stays = typeof cell === 'number' || (cell !== null && typeof cell === 'object' && 'held' in cell);
  const has = stays && (dimension !== undefined || per !== undefined);
  return {
    cell,
    unit: has
      ? { ...(dimension ? { dimension } : {}), ...(unit ? { unit } : {}), ...(per ? { per } : {}) }
      : null,
  };
}

/** True where a named cell has this unit already. */
export const hasUnit = (named: NamedCell, unit: SettingUnit | null): boolean =>
  named.dimension === unit?.dimension && named.unit === unit?.unit && named.per === unit?.per;

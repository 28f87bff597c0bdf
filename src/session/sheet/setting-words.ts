import { sheetOf } from '../../book/book.ts';
import type { Book, NamedCell } from '../../book/model.ts';
import { unitSign } from '../../units/sign.ts';
import { unitFromWord, unitOf } from '../../units/unit.ts';

/**
 * What a setting is called and measured in. In a sheet of settings (a name in every second row or more) its row says so:
 * the first text is the label, a later text that is a unit the unit. Elsewhere a row is about something else, and the
 * name in words stands in, with the unit of the column: `target_lean` reads “Target lean”.
 */
export function settingWords(book: Book, named: NamedCell): { label: string; unit?: string } {
  const sheet = sheetOf(book, named.sheet);
  const rows = new Set(
    [...book.names.values()].filter((one) => one.sheet === sheet.id).map(({ row }) => row),
  );
  const texts =
    rows.size * 2 < sheet.rows
      ? []
      : sheet.columns
          .filter(({ id, kind }) => id !== named.column && (kind === 'text' || kind === 'choice'))
          .flatMap(({ id }) => {
            const cell = sheet.cells.get(id)!.get(named.row);
            return typeof cell === 'string' && cell.trim() !== '' ? [cell.trim()] : [];
          });
  // A unit that was typed with the number is shown with it.
  const unit =
    named.dimension || named.per
      ? undefined
      : (texts.slice(1).flatMap((text) => (unitOf(text) ?? unitFromWord(text))?.unit ?? [])[0] ??
        sheet.columns.find(({ id }) => id === named.column)?.unit);
  const words = named.name.replaceAll('_', ' ').trim();
  return {
    label: texts[0] ?? words.charAt(0).toUpperCase() + words.slice(1),
    ...(unit === undefined ? {} : { unit: unitSign(unit) }),
  };
}

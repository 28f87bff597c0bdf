import { sheetOf } from '../../book/book.ts';
import { type Cell, CellKind } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import type { Column } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { columnFor, namedRows, withUnit } from '../../book/setting-unit.ts';
import { toEnd } from '../drive.ts';
import { hasUnit, readSetting } from '../text/setting.ts';
import { isUnchanged, readTyped } from '../text/typed.ts';
import type { Planned, State } from './define.ts';
import { plural } from './shared.ts';

/** A block of texts, row by row, and where its first stands. */
interface Block {
  readonly sheet: string;
  readonly row: number;
  readonly columns: readonly Column[];
  readonly texts: readonly (readonly string[])[];
  readonly formulas: boolean;
}

/** Texts that are read before others get a turn. */
const atOnce = 500;

/** The edits that put texts into cells; rows that are not there yet are added. Also how many texts did not fit. */
export const putTexts = (...of: Parameters<typeof puttingTexts>): Put => toEnd(puttingTexts(...of));

interface Put {
  readonly edits: readonly Edit[];
  readonly held: number;
}

/** The same bit by bit: tells now and then how many texts have been read. */
export function* puttingTexts(
  state: State,
  { sheet: id, row, columns, texts, formulas }: Block,
): Generator<number, Put> {
  const sheet = sheetOf(state.book, id);
  if (texts.some((line) => line.length > columns.length))
    refuse(
      `The block is wider than the ${plural(columns.length, 'column')} that it would go to. Add columns first.`,
    );
  const end = row + texts.length;
  if (end > limits.rows) refuse(`A sheet has at most ${limits.rows} rows.`);
  const units: Edit[] = [];
  let held = 0;
  let done = 0;
  const cells: Cell[][] = [];
  for (const [k, column] of columns.entries()) {
    const own = sheet.cells.get(column.id)!;
    const named = namedRows(state.book, id, column.id);
    const read = (text: string | undefined, at: number): Cell => {
      if (text === undefined) return at < sheet.rows ? own.get(at) : null;
      if (
        at < sheet.rows &&
        isUnchanged(
          text,
          own.get(at),
          own.kinds[at] ?? CellKind.blank,
          columnFor(column, named.get(at)),
          state.locale,
        )
      )
        return own.get(at);
      const cell = readInto(at, text);
      if (cell !== null && typeof cell === 'object' && 'held' in cell) held++;
      return cell;
    };
    const readInto = (at: number, text: string): Cell => {
      const setting = named.get(at);
      if (!setting) return readTyped(text, column, state.locale, formulas, sheet.purpose === 'worked');
      const { cell, unit } = readSetting(text, column, setting, state.locale, formulas);
      if (!hasUnit(setting, unit))
        units.push({ do: 'set-name', name: setting.name, target: withUnit(setting, unit) });
      return cell;
    };
    const list: Cell[] = [];
    for (const [i, line] of texts.entries()) {
      list.push(read(line[k], row + i));
      if (++done % atOnce === 0) yield done;
    }
    cells.push(list);
  }
  const edits: Edit[] = [
    { do: 'put-cells', sheet: id, row, columns: columns.map((column) => column.id), cells },
    ...units,
  ];
  if (end > sheet.rows)
    edits.unshift({ do: 'add-rows', sheet: id, row: sheet.rows, count: end - sheet.rows });
  return { edits, held };
}

export const heldInWords = (held: number): Pick<Planned, 'note'> =>
  held === 0
    ? {}
    : {
        note: `${plural(held, 'text')} ${held === 1 ? 'does' : 'do'} not fit the column and ${held === 1 ? 'is' : 'are'} unreadable.`,
      };

import { columnOf, sheetOf } from '../../book/book.ts';
import { CellKind } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import type { Column } from '../../book/model.ts';
import { z } from '../../book/zod.ts';
import type { FormulaCheck } from '../../calc/api.ts';
import { dimensions } from '../../units/dimension.ts';
import { bareFormula } from '../text/bare-formula.ts';
import { defineCommand, type State } from './define.ts';
import { columnId, plural, row, sheetId, together } from './shared.ts';

/**
 * Gives a column its formula, or one cell a formula of its own (with `row`). null or nothing takes it away. Rows that
 * hold something of their own keep it, unless `own` is "clear". A formula with a mistake is kept as typed, and the note
 * says what is wrong.
 */
export const setFormula = defineCommand({
  id: 'set-formula',
  schema: z.strictObject({
    sheet: sheetId,
    column: columnId,
    row: row.optional(),
    formula: z.string().max(limits.formula).nullable(),
    own: z.enum(['keep', 'clear']).optional(),
  }),
  plan(state, { sheet: id, column: ofId, row, formula, own = 'keep' }) {
    const sheet = sheetOf(state.book, id);
    const column = columnOf(sheet, ofId);
    const text = bareFormula(formula ?? '');
    const name = column.label || column.name;
    if (row !== undefined)
      return {
        edit: {
          do: 'put-cells',
          sheet: id,
          row,
          columns: [ofId],
          cells: [[text === '' ? null : { formula: text }]],
        },
        words: `Change the formula of ${name} in row ${row + 1}`,
        ...noteOf(text === '' ? undefined : state.calculation.check(text, { sheet: id, column: ofId, row })),
      };
    const check = text === '' ? undefined : state.calculation.check(text, { sheet: id, column: ofId });
    const cells = sheet.cells.get(ofId)!;
    const edits: Edit[] = [
      { do: 'change-column', sheet: id, column: withFormula(column, text, check, cells.blank) },
    ];
    const mine = ownRows(state, id, ofId);
    if (own === 'clear' && mine > 0)
      edits.push({
        do: 'put-cells',
        sheet: id,
        row: 0,
        columns: [ofId],
        cells: [new Array(sheet.rows).fill(null)],
      });
    const kept =
      text !== '' && own === 'keep' && mine > 0
        ? `${plural(mine, 'override remains', 'overrides remain')}.`
        : '';
    const note = [noteOf(check).note, kept].filter(Boolean).join(' ');
    return { edit: together(edits), words: `Change the formula of ${name}`, ...(note ? { note } : {}) };
  },
});

/** The column with another formula; a column without values of its own takes the dimension of the result. */
export function withFormula(
  column: Column,
  formula: string,
  check: FormulaCheck | undefined,
  blank: boolean,
): Column {
  const { formula: _, ...rest } = column;
  if (formula === '') return rest;
  const meaning = check?.meaning;
  if (!meaning || meaning.is === 'date' || !blank || column.kind !== 'number') return { ...rest, formula };
  const { dimension, unit } = meaning;
  const per = meaning.is === 'rate' ? meaning.per : undefined;
  if (column.dimension === dimension && column.per === per) return { ...rest, formula };
  const { dimension: _d, unit: _u, per: _p, ...plain } = rest;
  return {
    ...plain,
    ...(dimension ? { dimension } : {}),
    // The base unit goes without saying.
    ...(dimension && unit !== dimensions[dimension] ? { unit } : {}),
    ...(per ? { per } : {}),
    formula,
  } as Column;
}

/** How many rows of a column hold something of their own. */
function ownRows(state: State, sheet: string, column: string): number {
  const cells = sheetOf(state.book, sheet).cells.get(column)!;
  if (cells.blank) return 0;
  let own = 0;
  for (let i = 0; i < cells.length; i++) if (cells.kinds[i] !== CellKind.blank) own++;
  return own;
}

export const noteOf = (check: FormulaCheck | undefined): { note?: string } =>
  check && !check.ok && check.problems[0] ? { note: check.problems[0].sentence } : {};

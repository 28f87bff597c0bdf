import { sheetOf } from '../../book/book.ts';
import { limits } from '../../book/file-frame.ts';
import type { Column } from '../../book/model.ts';
import { properName } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { checkRole } from '../../book/roles/check-role.ts';
import { z } from '../../book/zod.ts';
import { followReferences } from '../follow-references.ts';
import { bareFormula } from '../text/bare-formula.ts';
import { columnParts, tidyColumn } from './column-parts.ts';
import { defineCommand } from './define.ts';
import { withFormula } from './set-formula.ts';
import { checkColumnName, columnTaken, newId, sheetId, together } from './shared.ts';

/** Adds a column. Without a name it gets one made from its label; with a formula it takes the dimension of its result. */
export const addColumn = defineCommand({
  id: 'add-column',
  schema: z.strictObject({ sheet: sheetId, index: z.int().min(0).optional(), column: columnParts.partial() }),
  plan(state, { sheet: id, index, column: parts }) {
    const sheet = sheetOf(state.book, id);
    if (sheet.columns.length >= limits.columns) refuse(`A sheet has at most ${limits.columns} columns.`);
    const name = parts.name ?? properName(parts.label || 'column', columnTaken(state, id));
    checkColumnName(state, id, name);
    const { formula, ...rest } = parts;
    const base = tidyColumn({
      ...rest,
      id: newId(name, (n) => sheet.columns.some((c) => c.id === n)),
      name,
      label: parts.label ?? name,
    });
    const text = bareFormula(formula ?? '');
    const place = { sheet: id, column: base.id };
    const column: Column = withFormula(
      base,
      text,
      text ? state.calculation.check(text, place) : undefined,
      true,
    );
    checkRole(sheet, column);
    const at = Math.min(index ?? sheet.columns.length, sheet.columns.length);
    const { edits } = followReferences(state.book, {
      is: 'move-columns',
      sheet: id,
      letters: (c) => (c < at ? c : c + 1),
    });
    return {
      edit: together([...edits, { do: 'add-column', sheet: id, index: at, column }]),
      words: `Add column ${column.label}`,
    };
  },
});

/** The command that adds a sheet. */
import { limits } from '../../book/file-frame.ts';
import type { Column, Purpose } from '../../book/model.ts';
import { nameKey, properName } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { checkRole } from '../../book/roles/check-role.ts';
import { z } from '../../book/zod.ts';
import { bareFormula } from '../text/bare-formula.ts';
import { columnParts, type Loose, tidyColumn } from './column-parts.ts';
import { defineCommand, type State } from './define.ts';
import { checkColumnName, checkSheetName, columnTaken, newId, sheetTaken } from './shared.ts';

export const purpose = z.enum(['gathered', 'worked', 'notes'] satisfies Purpose[]);

/** Adds a sheet with columns and blank rows. Without a name it gets one made from its label. */
export const addSheet = defineCommand({
  id: 'add-sheet',
  schema: z.strictObject({
    index: z.int().min(0).optional(),
    name: z.string().optional(),
    label: z.string().max(300).optional(),
    purpose: purpose.optional(),
    note: z.string().optional(),
    rows: z.int().min(0).max(limits.rows).optional(),
    columns: z.array(columnParts.partial()).max(limits.columns).optional(),
  }),
  plan(state, { index, name, label, purpose = 'gathered', note, rows = 0, columns = [] }) {
    const { sheets } = state.book;
    if (sheets.length >= limits.sheets) refuse(`A book has at most ${limits.sheets} sheets.`);
    const called = name ?? properName(label || 'sheet', sheetTaken(state));
    checkSheetName(state, called);
    const made = newColumns(state, columns);
    for (const column of made) checkRole({ label: label ?? called, columns: made }, column);
    const id = newId(called, (n) => sheets.some((s) => s.id === n));
    return {
      edit: {
        do: 'add-sheet',
        index: Math.min(index ?? sheets.length, sheets.length),
        sheet: {
          id,
          name: called,
          label: label ?? called,
          purpose,
          ...(note ? { note } : {}),
          rows,
          columns: made.map((column) => ({ column })),
        },
      },
      words: `Add sheet ${label ?? called}`,
    };
  },
});

function newColumns(
  state: State,
  parts: readonly { readonly [K in keyof Loose]?: Loose[K] | undefined }[],
): Column[] {
  const columns: Column[] = [];
  for (const part of parts) {
    const same = (n: string) => columns.some((c) => nameKey(c.name) === nameKey(n));
    const taken = columnTaken(state, undefined);
    const name = part.name ?? properName(part.label || 'column', (n) => same(n) || taken(n));
    checkColumnName(state, undefined, name);
    if (same(name)) refuse(`The sheet would have two columns called "${name}".`);
    const id = newId(name, (n) => columns.some((c) => c.id === n));
    const formula = bareFormula(part.formula ?? '');
    columns.push(tidyColumn({ ...part, formula, id, name, label: part.label ?? name }));
  }
  return columns;
}

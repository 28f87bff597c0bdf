import { sheetOf } from '../../book/book.ts';
import type { Cell, CellRun } from '../../book/cells.ts';
import type { SheetContent } from '../../book/edit.ts';
import { contentOf } from '../../book/edits/remove-sheet.ts';
import { limits } from '../../book/file-frame.ts';
import { properName } from '../../book/names.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { renameSheet } from '../../calc/index.ts';
import { followReferences } from '../follow-references.ts';
import { defineCommand, type State } from './define.ts';
import { newId, sheetId, sheetTaken, together } from './shared.ts';

/** Puts a copy of a sheet behind it. Its formulas refer to the copy wherever they referred to the sheet itself. */
export const duplicateSheet = defineCommand({
  id: 'duplicate-sheet',
  schema: z.strictObject({ sheet: sheetId }),
  plan(state, { sheet: ofId }) {
    const { sheets } = state.book;
    if (sheets.length >= limits.sheets) refuse(`A book has at most ${limits.sheets} sheets.`);
    const sheet = sheetOf(state.book, ofId);
    const name = properName(sheet.name, sheetTaken(state));
    const id = newId(name, (n) => sheets.some((s) => s.id === n));
    const content = contentOf(sheet);
    const copy = {
      ...content,
      id,
      name,
      label: `${sheet.label} (copy)`,
      columns: columnsFor(state, content, name),
    };
    return {
      edit: together([
        { do: 'add-sheet', index: sheets.indexOf(sheet) + 1, sheet: copy },
        ...followReferences(state.book, { is: 'copy-sheet', sheet: ofId, id, name }).edits,
      ]),
      words: `Duplicate sheet ${sheet.label}`,
    };
  },
});

function columnsFor(state: State, sheet: SheetContent, name: string): SheetContent['columns'] {
  const here = (formula: string) => renameSheet(formula, state.book, sheet.id, sheet.id, name);
  return sheet.columns.map(({ column, cells }) => ({
    column: column.formula === undefined ? column : { ...column, formula: here(column.formula) },
    ...(cells ? { cells: withFormulas(cells, here) } : {}),
  }));
}

function withFormulas(run: CellRun, rewrite: (formula: string) => string): CellRun {
  if ('formulas' in run)
    return { ...run, formulas: new Map([...run.formulas].map(([r, f]) => [r, rewrite(f)])) };
  return run.map(
    (cell): Cell =>
      cell !== null && typeof cell === 'object' && 'formula' in cell
        ? { formula: rewrite(cell.formula) }
        : cell,
  );
}

import { columnOf, sheetOf } from '../../book/book.ts';
import type { Cell, Cells } from '../../book/cells.ts';
import type { Edit } from '../../book/edit.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { checkRole } from '../../book/roles/check-role.ts';
import { columnInRole, roleAfter } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { renameColumn } from '../../calc/index.ts';
import type { Locale } from '../../units/locale.ts';
import { chosenRole } from '../figure/figure-lifter.ts';
import { followReferences } from '../follow-references.ts';
import { remeasuredMarks } from '../marks/remeasured.ts';
import { bareFormula } from '../text/bare-formula.ts';
import { readTyped, valueText } from '../text/typed.ts';
import { columnParts, tidyColumn } from './column-parts.ts';
import { defineCommand, type State } from './define.ts';
import { noteOf } from './set-formula.ts';
import { checkColumnName, columnId, plural, renamedInWords, sheetId, together } from './shared.ts';

/**
 * Changes what is said about a column; null takes a part away. A new name goes into every formula and recipe that uses
 * the column. A new kind or dimension reads the cells again as they are shown; what does not fit is held. Another unit
 * of the same dimension changes no stored value.
 */
export const changeColumn = defineCommand({
  id: 'change-column',
  schema: z.strictObject({ sheet: sheetId, column: columnId, change: columnParts.partial() }),
  plan(state, { sheet: id, column: ofId, change }) {
    const { book, locale } = state;
    const sheet = sheetOf(book, id);
    const before = columnOf(sheet, ofId);
    const { formula = before.formula, ...parts } = change;
    const given = Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
    const text = bareFormula(formula ?? '');
    // A label that only repeats the name goes along with it.
    const label =
      before.label === before.name && given.label === undefined ? { label: given.name ?? before.label } : {};
    const after = tidyColumn({ ...fittingUnit(before, { ...given, ...label }), formula: text });
    const renamed = after.name !== before.name;
    if (renamed) checkColumnName(state, id, after.name, before.name);
    const followed = renamed
      ? followReferences(
          book,
          { is: 'rename-column', sheet: id, column: ofId, to: after.name },
          { sheet: id, column: ofId },
        )
      : undefined;
    const called = renamed || after.label !== before.label;
    const named = renamed ? withOwnFormula(state, id, before, after) : after;
    const column = called && change.role === undefined ? sameRole(state, sheet, before, named) : named;
    if (change.role) checkRole(sheet, column);
    const edits: Edit[] = [...(followed?.edits ?? []), { do: 'change-column', sheet: id, column }];
    const cells = sheet.cells.get(ofId)!;
    const reread = readAgain(before, after) ? rereadCells(cells, before, after, locale) : undefined;
    if (reread) edits.push({ do: 'put-cells', sheet: id, row: 0, columns: [ofId], cells: [reread.cells] });
    if (before.dimension !== after.dimension && after.kind === 'number')
      edits.push(...remeasuredMarks(book, edits, id, ofId, (n) => remeasured(n, before, after, locale)));
    const notes = [
      (followed && renamedInWords(followed, after.name)) ?? '',
      reread?.held
        ? `${plural(reread.held, 'cell')} ${reread.held === 1 ? 'does' : 'do'} not fit and ${reread.held === 1 ? 'is' : 'are'} unreadable.`
        : '',
      text !== '' && text !== before.formula
        ? (noteOf(state.calculation.check(text, { sheet: id, column: ofId })).note ?? '')
        : '',
    ].filter(Boolean);
    return {
      edit: together(edits),
      words: renamed
        ? `Rename column ${before.name} to ${after.name}`
        : wordsFor(before, Object.keys(change)),
      ...(notes.length ? { note: notes.join(' ') } : {}),
    };
  },
});

/** A column's own formula under its new name. */
const withOwnFormula = ({ book }: State, sheet: string, before: Column, after: Column): Column =>
  after.formula === undefined
    ? after
    : { ...after, formula: renameColumn(after.formula, book, sheet, sheet, before.id, after.name) };

/** What a column is for figure, handouts and checks stays, whatever it is called. */
function sameRole({ book }: State, sheet: Sheet, before: Column, after: Column): Column {
  const { role: _, ...rest } = after;
  const chosen = before.role === undefined ? chosenRole(book, before.name) : undefined;
  const taken = chosen !== undefined && columnInRole(sheet, chosen)?.role === chosen;
  const role = chosen !== undefined && !taken ? chosen : roleAfter(sheet, before, after);
  return role === undefined ? rest : { ...rest, role };
}

/** A change of one part is called by it. */
function wordsFor({ label }: Column, parts: readonly string[]): string {
  const only = parts.length === 1 ? parts[0] : undefined;
  const called: Readonly<Record<string, string>> = {
    width: `Set the width of ${label}`,
    hidden: `Hide or show ${label}`,
    unit: `Change the unit of ${label}`,
    note: `Change the note of ${label}`,
    format: `Change the number format of ${label}`,
    role: `Change what ${label} is`,
    formula: `Change the formula of ${label}`,
  };
  return (only && called[only]) || `Change column ${label}`;
}

/** The column with the change; a unit that belongs to the old dimension goes with it. */
function fittingUnit(before: Column, change: Readonly<Record<string, unknown>>): Column {
  const after = { ...before, ...change };
  const moved = 'dimension' in change && change.dimension !== before.dimension && !('unit' in change);
  return (moved ? { ...after, unit: undefined } : after) as Column;
}

const readAgain = (before: Column, after: Column): boolean =>
  before.kind !== after.kind ||
  before.dimension !== after.dimension ||
  (after.kind === 'choice' && JSON.stringify(before.choices) !== JSON.stringify(after.choices));

/** A number of the column as it is shown, read for the changed column. */
function remeasured(number: number, before: Column, after: Column, locale: Locale): number {
  const now = readTyped(valueText(number, before, locale), after, locale, false);
  return typeof now === 'number' ? now : number;
}

/** Own values as they are shown, read for the changed column; formulas stay. */
function rereadCells(
  cells: Cells,
  before: Column,
  after: Column,
  locale: Locale,
): { cells: Cell[]; held: number } | undefined {
  if (cells.blank) return undefined;
  let held = 0;
  const read = Array.from({ length: cells.length }, (_, row): Cell => {
    const cell = cells.get(row);
    if (cell === null || (typeof cell === 'object' && 'formula' in cell)) return cell;
    const now = readTyped(valueText(cell, before, locale), after, locale, false);
    if (now !== null && typeof now === 'object' && 'held' in now) held++;
    return now;
  });
  return { cells: read, held };
}

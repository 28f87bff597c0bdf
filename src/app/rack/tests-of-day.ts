/** Which measures rack mode asks for: left and right of one measure together. */

import { roleIn } from '../../book/roles/column-in-role.ts';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';

export interface TestOfDay {
  readonly label: string;
  readonly sides: readonly { readonly side: string; readonly column: ColumnOutline }[];
}

const pairs = [
  { left: 'wall_left', right: 'wall_right', label: 'Knee to wall' },
  { left: 'ankle_left', right: 'ankle_right', label: 'Ankle range' },
] as const;

/** Columns that can be asked for: numbers that are typed in. */
export const askable = ({ columns }: SheetOutline): readonly ColumnOutline[] =>
  columns.filter(({ kind, formula, hidden }) => kind === 'number' && formula === undefined && !hidden);

/** Tests that are taken again and again come first; lengths of bones are measured once. */
const usual = new Set(['mass', 'wall_left', 'wall_right', 'ankle', 'ankle_left', 'ankle_right']);
const MOST_USUAL = 6;

/** The columns asked for where nobody chose: body mass and the ankle tests, else the first few. */
export function usualColumns(sheet: SheetOutline): readonly string[] {
  const all = askable(sheet);
  const found = all.filter((column) => usual.has(roleIn(sheet, column) ?? ''));
  return (found.length > 0 ? found : all.slice(0, MOST_USUAL)).map(({ id }) => id);
}

/** The columns as tests, in the order of the sheet. */
export function testsOfDay(sheet: SheetOutline, chosen: readonly string[]): readonly TestOfDay[] {
  const columns = askable(sheet).filter(({ id }) => chosen.includes(id));
  const done = new Set<ColumnOutline>();
  return columns.flatMap((column): TestOfDay[] => {
    if (done.has(column)) return [];
    const role = roleIn(sheet, column);
    const pair = pairs.find(({ left, right }) => role === left || role === right);
    const sides = pair
      ? ([pair.left, pair.right] as const).map((one) => columns.find((c) => roleIn(sheet, c) === one))
      : [];
    if (!pair || sides.some((one) => one === undefined))
      return [{ label: column.label, sides: [{ side: '', column }] }];
    for (const one of sides) done.add(one!);
    return [
      {
        label: pair.label,
        sides: [
          { side: 'Left', column: sides[0]! },
          { side: 'Right', column: sides[1]! },
        ],
      },
    ];
  });
}

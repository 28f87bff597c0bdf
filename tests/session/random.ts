import fc from 'fast-check';
import type { Outline } from '../../src/session/api.ts';
import type { Command } from '../../src/session/commands/index.ts';
import type { MarksDraft } from '../../src/session/marks/draft.ts';

/** Random commands for property tests: any picks give a command that makes sense for the book at hand. */
const typed = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 10, max: 60 }).map(String) },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      '41,5',
      '17 in',
      '5 ft 11',
      '225 lb',
      '2025-03-01',
      'yes',
      'ja',
      '=1+1',
      "'=x",
      '',
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '=A1*2',
      '=SUM(A1:B2)',
      '=AVERAGE(sheet.c_1)',
      '=named_1+1',
      '=1/0',
      '=)',
      '=B$2&"x"',
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
);
const formula = fc.constantFrom(
  'c_1 + 1',
  'c_1 / c_2',
  'IF(c_1 > 20, "long", "short")',
  'AVERAGE(sheet.c_1)',
  'named_1 * c_2',
  'A1 & "x"',
  'A$1 + B2',
  'SEG.RATIO(c_1, c_2)',
  'nothing_here',
  '1 +',
);

export const picks = fc.record({
  sort: fc.nat(),
  sheet: fc.nat(),
  column: fc.nat(),
  other: fc.nat(),
  row: fc.nat(),
  count: fc.integer({ min: 1, max: 4 }),
  texts: fc.array(fc.array(typed, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 5 }),
  formula,
  kind: fc.constantFrom(
    'number' as const,
    'text' as const,
    'date' as const,
    'yes-no' as const,
    'choice' as const,
  ),
  seed: fc.nat({ max: 9 }),
  flag: fc.boolean(),
});
export type Picks = typeof picks extends fc.Arbitrary<infer T> ? T : never;

/** Rules whose formulas name what other commands rename, move and remove; many are refused. */
function marksFor({ formula, seed, flag }: Picks, next: string, sheet: string): MarksDraft | null {
  if (seed === 0) return null;
  return {
    rules: [
      { is: 'true', to: formula, tone: 'attend' },
      { is: flag ? 'above' : 'filled', to: String(seed), tone: 'note' },
    ],
    ...(flag ? { scale: { to: `named_${seed % 3}` } } : {}),
    ...(seed > 5
      ? {
          trend: { is: 'log', sheet, dates: next, values: next, who: next, by: next, last: 5 } as const,
        }
      : {}),
  };
}

export function commandFor(outline: Outline, pick: Picks): Command {
  const made: Command = {
    do: 'add-sheet',
    name: outline.sheets.some((s) => s.name === 'sheet') ? `sheet_${pick.seed}` : 'sheet',
    rows: 3,
    columns: [
      { name: 'c_1', dimension: 'length' },
      { name: 'c_2', kind: pick.kind },
    ],
  };
  const sheet = outline.sheets[pick.sheet % Math.max(1, outline.sheets.length)];
  if (!sheet) return made;
  const id = sheet.id;
  const column = sheet.columns[pick.column % Math.max(1, sheet.columns.length)]?.id;
  const next = sheet.columns[(pick.column + 1) % Math.max(1, sheet.columns.length)]?.id;
  const row = pick.row % (sheet.rows + 1);
  const inside = sheet.rows === 0 ? 0 : pick.row % sheet.rows;
  const count = Math.min(pick.count, Math.max(1, sheet.rows - inside));
  const add: Command = {
    do: 'add-column',
    sheet: id,
    index: pick.other % (sheet.columns.length + 1),
    column: {
      label: `Column ${pick.seed}`,
      kind: pick.kind,
      ...(pick.flag ? { formula: pick.formula } : {}),
    },
  };
  if (column === undefined || next === undefined) return add;
  const columns = column === next ? [column] : [column, next];
  const texts = pick.texts.map((line) => line.slice(0, columns.length));
  const commands: readonly Command[] = [
    { do: 'set-cells', sheet: id, row, columns, texts },
    { do: 'set-cells', sheet: id, row, columns, texts, formulas: false },
    { do: 'clear-cells', sheet: id, row: inside, rows: count, columns },
    {
      do: 'fill',
      sheet: id,
      columns,
      from: inside,
      fromRows: 1,
      row: row,
      rows: pick.count,
      series: pick.flag,
    },
    { do: 'set-formula', sheet: id, column, formula: pick.formula, own: pick.flag ? 'keep' : 'clear' },
    { do: 'set-formula', sheet: id, column, row: inside, formula: pick.formula },
    { do: 'set-formula', sheet: id, column, formula: null },
    { do: 'release-cells', sheet: id, row: inside, rows: count, columns },
    { do: 'add-rows', sheet: id, row, count: pick.count },
    { do: 'remove-rows', sheet: id, row: inside, count },
    { do: 'move-rows', sheet: id, row: inside, count, to: pick.other % Math.max(1, sheet.rows - count + 1) },
    { do: 'sort-rows', sheet: id, by: [{ column, descending: pick.flag }, { column: next }] },
    add,
    { do: 'duplicate-column', sheet: id, column },
    { do: 'remove-column', sheet: id, column },
    { do: 'move-column', sheet: id, column, index: pick.other % sheet.columns.length },
    { do: 'change-column', sheet: id, column, change: { kind: pick.kind } },
    { do: 'change-column', sheet: id, column, change: { name: `c_${pick.seed}` } },
    {
      do: 'change-column',
      sheet: id,
      column,
      change: { kind: 'number', dimension: pick.flag ? 'length' : 'mass', unit: pick.flag ? 'in' : 'lb' },
    },
    made,
    { do: 'duplicate-sheet', sheet: id },
    ...(outline.sheets.length > 2 ? [{ do: 'remove-sheet', sheet: id } as const] : []),
    { do: 'move-sheet', sheet: id, index: pick.other % outline.sheets.length },
    {
      do: 'change-sheet',
      sheet: id,
      change: { name: `sheet_${pick.seed}`, note: pick.flag ? 'A note' : null },
    },
    { do: 'name-cell', sheet: id, column, row: inside, name: `named_${pick.seed % 3}` },
    { do: 'rename-name', name: `named_${pick.seed % 3}`, to: `named_${pick.other % 4}` },
    { do: 'remove-name', name: `named_${pick.seed % 3}` },
    { do: 'set-title', title: `Title ${pick.seed}` },
    { do: 'set-marks', sheet: id, column, marks: marksFor(pick, next, id) },
    {
      do: 'set-part',
      part: 'views',
      key: id,
      value: pick.flag ? { summaries: [{ column, formula: pick.formula }], rows: { group: next } } : null,
    },
    { do: 'set-part', part: 'settings', key: 'locale', value: { decimal: ',', dateOrder: 'dmy' } },
    { do: 'set-part', part: 'charts', key: `chart_${pick.seed}`, value: pick.flag ? { of: id } : null },
  ];
  return commands[pick.sort % commands.length]!;
}

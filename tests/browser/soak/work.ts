import type { ColumnOutline, Outline, SheetOutline } from '../../../src/session/api.ts';
import type { Command } from '../../../src/session/commands/index.ts';
import type { BookService } from '../../../src/worker/protocol.ts';
import type { Chance } from '../../fuzz/mutate.ts';

/** About how many rows the log has, however long the work goes on. */
const LOG_ROWS = 1_200;

/** What the sample book gets beside its own sheets: a log of sessions, weekly sums over it, and charts. */
export const beginning: readonly Command[] = [
  {
    do: 'add-sheet',
    name: 'log',
    label: 'Log',
    rows: LOG_ROWS,
    columns: [
      { name: 'who', label: 'Who', kind: 'text' },
      { name: 'on_day', label: 'Day', kind: 'date' },
      { name: 'load', label: 'Load', kind: 'number', dimension: 'mass', unit: 'kg' },
      { name: 'reps', label: 'Reps', kind: 'number' },
      { name: 'volume', label: 'Volume', kind: 'number', formula: 'load * reps' },
      { name: 'best', label: 'Best', kind: 'number', formula: 'STRENGTH.MAX(load, reps)' },
    ],
  },
  {
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['who', 'on_day', 'load', 'reps'],
    texts: Array.from({ length: LOG_ROWS }, (_, i) => logLine(i)),
  },
  {
    do: 'add-sheet',
    name: 'week',
    label: 'Week',
    purpose: 'worked',
    rows: 24,
    columns: [
      { name: 'of', label: 'Of', kind: 'text' },
      { name: 'total', label: 'Total', kind: 'number' },
      { name: 'top', label: 'Top', kind: 'number' },
    ],
  },
  {
    do: 'set-cells',
    sheet: 'week',
    row: 0,
    columns: ['of', 'total', 'top'],
    formulas: true,
    texts: Array.from({ length: 24 }, (_, i) => [
      `L${i}`,
      `=SUMIFS(log.volume, log.who, A${i + 1})`,
      `=MAXIFS(log.load, log.who, A${i + 1})`,
    ]),
  },
  chart('lean', { kind: 'scatter', sheet: 'roster', columns: ['femur', 'lean'], by: 'sex' }),
  chart('spread', { kind: 'distribution', sheet: 'roster', columns: ['lean'], by: 'sex' }),
  chart('sides', { kind: 'agreement', sheet: 'roster', columns: ['wall_left', 'wall_right'] }),
  chart('trend', { kind: 'trend', sheet: 'log', columns: ['on_day', 'load'], by: 'who' }),
];

function chart(key: string, record: object): Command {
  return { do: 'set-part', part: 'charts', key, value: { title: key, ...record } };
}

function logLine(i: number): string[] {
  const day = new Date(Date.UTC(2024, 0, 1 + (i % 365))).toISOString().slice(0, 10);
  return [`L${i % 24}`, day, String(60 + ((i * 7) % 90)), String(1 + (i % 10))];
}

/** One thing that is done. It answers the outline after it, or nothing where the book stays as it is. */
export interface Step {
  readonly kind: string;
  readonly run: (service: BookService) => Promise<Outline | undefined>;
}

const sheetOf = (outline: Outline, id: string): SheetOutline | undefined =>
  outline.sheets.find((sheet) => sheet.id === id);

/** The next step: what people do in an hour, in about the shares in which they do it. */
export function stepFor(outline: Outline, chance: Chance, k: number): Step {
  const log = sheetOf(outline, 'log');
  const roster = sheetOf(outline, 'roster');
  const week = sheetOf(outline, 'week');
  // Undo may have gone back before the beginning.
  if (!log || !roster || !week || log.rows < 10 || roster.rows < 2 || week.rows < 2) return redo;
  let at = chance.n(1_000);
  for (const [share, make] of shares) {
    at -= share;
    if (at < 0) return make({ outline, log, roster, week, chance, k });
  }
  return undo;
}

interface Now {
  readonly outline: Outline;
  readonly log: SheetOutline;
  readonly roster: SheetOutline;
  readonly week: SheetOutline;
  readonly chance: Chance;
  readonly k: number;
}

const run = (kind: string, command: Command): Step => ({
  kind,
  run: async (service) => {
    const done = await service.run(command);
    return done.ok ? done.outline : undefined;
  },
});
const read = (kind: string, ask: (service: BookService) => Promise<unknown>): Step => ({
  kind,
  run: async (service) => {
    // A refusal (a chart whose column was renamed away) is an answer too.
    await ask(service).catch(() => undefined);
    return undefined;
  },
});
const undo: Step = {
  kind: 'undo',
  run: async (service) => {
    const done = await service.undo();
    return done.ok ? done.outline : undefined;
  },
};
const redo: Step = {
  kind: 'redo',
  run: async (service) => {
    const done = await service.redo();
    return done.ok ? done.outline : undefined;
  },
};

const column = ({ columns }: SheetOutline, id: string): ColumnOutline | undefined =>
  columns.find((one) => one.id === id);
/** The name that something has now: it may have been renamed. */
const nameIn = (sheet: SheetOutline, id: string): string => column(sheet, id)?.name ?? id;

/** Shares of a thousand; what is left is undo. */
const shares: readonly (readonly [share: number, make: (now: Now) => Step])[] = [
  [
    260,
    ({ chance, roster }) =>
      run('edit a length', {
        do: 'set-cells',
        sheet: 'roster',
        row: chance.n(roster.rows),
        columns: [chance.of(['femur', 'tibia', 'trunk', 'wall_left', 'wall_right', 'mass'])],
        texts: [[chance.of([String(30 + chance.n(300) / 10), '17 in', '41,5', 'not measured', ''])]],
      }),
  ],
  [
    220,
    ({ chance, log }) =>
      run('edit the log', {
        do: 'set-cells',
        sheet: 'log',
        row: chance.n(log.rows),
        columns: [chance.of(['load', 'reps'])],
        texts: [[String(1 + chance.n(120))]],
      }),
  ],
  [
    60,
    ({ chance, log }) =>
      run('paste into the log', {
        do: 'set-cells',
        sheet: 'log',
        row: chance.n(Math.max(1, log.rows - 30)),
        columns: ['who', 'on_day', 'load', 'reps'],
        texts: Array.from({ length: 1 + chance.n(30) }, (_, i) => logLine(chance.n(5_000) + i)),
      }),
  ],
  [
    20,
    ({ chance, log }) =>
      run('clear', {
        do: 'clear-cells',
        sheet: 'log',
        row: chance.n(log.rows - 4),
        rows: 3,
        columns: ['load', 'reps'],
      }),
  ],
  [
    20,
    ({ chance, log }) =>
      run('fill', {
        do: 'fill',
        sheet: 'log',
        columns: ['load'],
        from: chance.n(log.rows - 9),
        fromRows: 2,
        row: chance.n(log.rows - 9),
        rows: 6,
        series: chance.n(2) === 0,
      }),
  ],
  [
    30,
    ({ chance, log }) =>
      run('column formula', {
        do: 'set-formula',
        sheet: 'log',
        column: 'volume',
        formula: `${nameIn(log, 'load')} * ${nameIn(log, 'reps')}${chance.of(['', ' * 1', ` + ${chance.n(9)}`, ` / SUM(${log.name}.${nameIn(log, 'load')})`])}`,
      }),
  ],
  [
    40,
    ({ chance, log, week }) =>
      run('free formula', {
        do: 'set-cells',
        sheet: 'week',
        row: chance.n(week.rows),
        columns: [chance.of(['total', 'top'])],
        formulas: true,
        texts: [
          [
            chance.of([
              `=SUMIFS(${log.name}.${nameIn(log, 'volume')}, ${log.name}.${nameIn(log, 'who')}, "L${chance.n(24)}")`,
              `=AVERAGE(${log.name}.${nameIn(log, 'load')}) + target_lean`,
              '=A1 & "x"',
              `=TRAIN.BEST(${log.name}.${nameIn(log, 'load')})`,
              '=B1 * 2',
            ]),
          ],
        ],
      }),
  ],
  [
    25,
    ({ chance }) =>
      run('named cell', {
        do: 'set-cells',
        sheet: 'assumptions',
        row: 0,
        columns: ['amount'],
        texts: [[String(24 + chance.n(10))]],
      }),
  ],
  [
    15,
    ({ chance }) =>
      run('rename a column', {
        do: 'change-column',
        sheet: 'log',
        column: chance.of(['load', 'reps']),
        change: { name: `measure_${chance.of(['a', 'b', 'c'])}${chance.n(50)}x` },
      }),
  ],
  [
    8,
    ({ chance }) =>
      run('rename a sheet', { do: 'change-sheet', sheet: 'log', change: { name: `log_${chance.n(30)}_x` } }),
  ],
  [
    35,
    ({ chance, log }) =>
      log.rows > LOG_ROWS
        ? run('remove rows', {
            do: 'remove-rows',
            sheet: 'log',
            row: chance.n(log.rows - 20),
            count: 1 + chance.n(15),
          })
        : run('add rows', { do: 'add-rows', sheet: 'log', row: chance.n(log.rows), count: 1 + chance.n(15) }),
  ],
  [
    15,
    ({ chance, log }) => {
      const extra = log.columns.filter(({ label }) => label === 'Extra');
      return extra.length > 2
        ? run('remove a column', { do: 'remove-column', sheet: 'log', column: extra[0]!.id })
        : run('add a column', {
            do: 'add-column',
            sheet: 'log',
            column: { label: 'Extra', kind: 'number', formula: `${nameIn(log, 'load')} + ${chance.n(9)}` },
          });
    },
  ],
  [
    10,
    ({ chance, outline }) => {
      const copies = outline.sheets.filter(({ id }) => !known.has(id));
      return copies.length > 3
        ? run('remove a sheet', { do: 'remove-sheet', sheet: copies[0]!.id })
        : run('copy a sheet', { do: 'duplicate-sheet', sheet: chance.of(['week', 'heights', 'roster']) });
    },
  ],
  [
    8,
    ({ chance, log }) =>
      run('sort', {
        do: 'sort-rows',
        sheet: 'log',
        by: [{ column: chance.of(log.columns).id, descending: chance.n(2) === 0 }],
      }),
  ],
  [
    8,
    ({ chance }) => ({
      kind: 'bring in a file',
      run: async (service) => {
        const lines = Array.from(
          { length: 60 },
          (_, i) => `T${(i + chance.n(4)) % 70},${38 + chance.n(80) / 10},2025-0${1 + (i % 9)}-11`,
        );
        const file = new Blob([`lifter,femur (cm),seen\n${lines.join('\n')}\n`]);
        const looked = await service.readFile(file, 'tape.csv', { mode: 'replace' });
        if (!looked.ok) return undefined;
        const done = await service.importFile();
        return done.ok ? done.outline : undefined;
      },
    }),
  ],
  [
    60,
    ({ chance }) =>
      read('chart', (service) => service.chart(chance.of(['lean', 'spread', 'sides', 'trend']))),
  ],
  [
    20,
    ({ chance, roster }) =>
      read('working', (service) =>
        service.working({ sheet: 'roster', column: 'lean', row: chance.n(roster.rows) }),
      ),
  ],
  [20, ({ chance, roster }) => read('figure', (service) => service.figure('roster', chance.n(roster.rows)))],
  [10, () => read('doubts', (service) => service.doubts())],
  [6, ({ k }) => read('find', (service) => service.find({ text: String(k % 50) }))],
  [3, () => read('handouts', (service) => service.handouts({ sheet: 'roster' }))],
  [
    4,
    ({ log }) =>
      read('summaries', (service) => service.summaries('log', [new Int32Array(log.rows).map((_, i) => i)])),
  ],
  [3, () => read('save as CSV', (service) => service.csv('log'))],
  [
    2,
    ({ k }) => ({
      kind: 'keep a version',
      run: async (service) => {
        const versions = await service.versions();
        if (versions.length > 4) await service.dropVersion(versions.at(-1)!.number);
        await service.keepVersion(`after ${k}`);
        return undefined;
      },
    }),
  ],
  [35, () => redo],
];

/** Ids of the sheets that stay. */
const known = new Set(['roster', 'heights', 'assumptions', 'summary', 'notes', 'log', 'week', 'tape']);

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../../src/book/model.ts';
import { chartOf } from '../../../src/session/charts/chart.ts';
import { spansOf } from '../../../src/session/charts/drawing/places.ts';
import { Session } from '../../../src/session/session.ts';

type Row = readonly (string | number)[];

const table = (name: string): { headings: string[]; rows: number[][] } => {
  const [first, ...rest] = readFileSync(`tests/reference/${name}.csv`, 'utf8').trim().split(/\r?\n/);
  return { headings: first!.split(','), rows: rest.map((line) => line.split(',').map(Number)) };
};

/** A book with one sheet "data" and one chart of it. */
function drawn(
  columns: readonly { name: string; kind?: 'number' | 'text' | 'date' }[],
  rows: readonly Row[],
  chart: Record<string, Json>,
) {
  const session = Session.create();
  const added = session.execute({
    do: 'add-sheet',
    name: 'data',
    columns: columns.map(({ name, kind = 'number' }) => ({ name, kind })),
  });
  if (!added.ok) throw new Error(added.sentence);
  session.execute({
    do: 'set-cells',
    sheet: 'data',
    row: 0,
    columns: columns.map(({ name }) => name),
    texts: rows.map((row) => row.map(String)),
  });
  session.execute({
    do: 'set-part',
    part: 'charts',
    key: 'c',
    value: { title: 'A chart', sheet: 'data', ...chart },
  });
  return { session, chart: () => session.ask((context) => chartOf(context, 'c')) };
}

/** Σ over a list, for closed forms written out here. */
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;
const sd = (values: readonly number[]): number =>
  Math.sqrt(sum(values.map((value) => (value - mean(values)) ** 2)) / (values.length - 1));
/** Standard normal quantile of .975 (any table of the normal distribution). */
const z = 1.959963984540054;

describe('agreement', () => {
  test('draws the bias and the limits that Bland & Altman 1986 print for the first readings of two flow meters', () => {
    const { headings, rows } = table('bland_altman_1986_pefr');
    const [a, b] = [headings.indexOf('wright1'), headings.indexOf('mini1')];
    const { panels } = drawn(
      [{ name: 'wright' }, { name: 'mini' }],
      rows.map((row) => [row[a]!, row[b]!]),
      {
        kind: 'agreement',
        columns: ['wright', 'mini'],
      },
    ).chart();
    const [low, high] = panels[0]!.levels.filter(({ is }) => is === 'limit').map(({ y }) => y);
    const bias = panels[0]!.levels.find(({ is }) => is === 'bias')!.y;
    // Bland & Altman 1986, Lancet 1:307–310: mean difference −2.1 l/min, SD 38.8; limits there with 2 SD: −79.7 and 75.5.
    expect(bias).toBeCloseTo(-2.1, 1);
    expect((high! - low!) / 2 / z).toBeCloseTo(38.8, 1);
    expect(bias + 2 * ((low! - bias) / z)).toBeCloseTo(-79.7, 0);
    expect(bias + 2 * ((high! - bias) / z)).toBeCloseTo(75.5, 0);
    const point = panels[0]!.points[0]!;
    expect([point.x, point.y]).toEqual([(494 + 512) / 2, 494 - 512]);
    expect(panels[0]!.points).toHaveLength(17);
  });
});

describe('a scatter', () => {
  // Anscombe 1973, Am Stat 27:17–21: all four sets have the line y = 3 + .5 x.
  test.each([1, 2, 3, 4])('draws the line y = 3 + x/2 through set %i of Anscombe 1973', (set) => {
    const { headings, rows } = table('anscombe');
    const pairs = rows.map((row) => [row[headings.indexOf(`x${set}`)]!, row[headings.indexOf(`y${set}`)]!]);
    const [panel] = drawn([{ name: 'across' }, { name: 'up' }], pairs, {
      kind: 'scatter',
      columns: ['across', 'up'],
    }).chart().panels;
    for (const [x, y] of panel!.lines[0]!.at) expect(y).toBeCloseTo(3 + x / 2, 1);
  });

  test('draws the 95 % prediction interval of the closed form', () => {
    const { headings, rows } = table('anscombe');
    const pairs = rows.map((row) => [row[headings.indexOf('x1')]!, row[headings.indexOf('y1')]!] as const);
    const [panel] = drawn([{ name: 'across' }, { name: 'up' }], pairs, {
      kind: 'scatter',
      columns: ['across', 'up'],
    }).chart().panels;
    const [xs, ys] = [pairs.map(([x]) => x), pairs.map(([, y]) => y)];
    const sxx = sum(xs.map((x) => (x - mean(xs)) ** 2));
    const slope = sum(pairs.map(([x, y]) => (x - mean(xs)) * (y - mean(ys)))) / sxx;
    const line = (x: number) => mean(ys) + slope * (x - mean(xs));
    const see = Math.sqrt(sum(pairs.map(([x, y]) => (y - line(x)) ** 2)) / 9);
    // Student's t for .975 and 9 degrees of freedom, 2.262157 (any t table).
    for (const [x, low, high] of panel!.bands[0]!.at) {
      const margin = 2.262157163 * see * Math.sqrt(1 + 1 / 11 + (x - mean(xs)) ** 2 / sxx);
      expect(low).toBeCloseTo(line(x) - margin, 6);
      expect(high).toBeCloseTo(line(x) + margin, 6);
    }
    expect(panel!.bands[0]!.at).toHaveLength(49);
  });

  test('leaves out rows without both values, says how many, and follows the sheet and its filter', () => {
    const rows = [
      [1, 2],
      [2, 4],
      [3, ''],
      [4, 8],
    ];
    const { session, chart } = drawn([{ name: 'across' }, { name: 'up' }], rows, {
      kind: 'scatter',
      columns: ['across', 'up'],
    });
    expect(chart().panels[0]!.points.map(({ x }) => x)).toEqual([1, 2, 4]);
    expect(chart().notes.join(' ')).toContain('1 of 4 rows');
    session.execute({ do: 'set-cells', sheet: 'data', row: 2, columns: ['up'], texts: [['6']] });
    expect(chart().panels[0]!.points.map(({ x }) => x)).toEqual([1, 2, 3, 4]);
    session.execute({
      do: 'set-part',
      part: 'views',
      key: 'data',
      value: { rows: { where: [{ column: 'across', is: 'from to', from: '3' }] } },
    });
    expect(chart().panels[0]!.points.map(({ x }) => x)).toEqual([3, 4]);
    expect(chart().notes[0]).toBe('The filter of data applies: 2 of its 4 rows are read.');
    session.undo();
    expect(chart().panels[0]!.points).toHaveLength(4);
    expect(chart().notes.join(' ')).not.toContain('filter');
  });
});

describe('before and after', () => {
  test('draws the band of the minimal detectable change, z · √2 · SEM (Weir 2005), about no change', () => {
    const rows = [
      [10, 12],
      [20, 20.5],
      [30, 31],
    ];
    const { panels, notes } = drawn([{ name: 'before' }, { name: 'after' }], rows, {
      kind: 'pairs',
      columns: ['before', 'after'],
      sem: 0.5,
    }).chart();
    const mdc = z * Math.SQRT2 * 0.5;
    for (const [x, low, high] of panels[0]!.bands[0]!.at) {
      expect(low).toBeCloseTo(x - mdc, 9);
      expect(high).toBeCloseTo(x + mdc, 9);
    }
    // 1.386: only the change of 2 is beyond it.
    expect(panels[0]!.points.map(({ note }) => note!.includes('more than'))).toEqual([true, false, false]);
    expect(notes[0]).toContain('1 differ');
  });

  test('takes the error from the pairs where none is given, as SD of the differences / √2 (Hopkins 2000)', () => {
    const rows = [
      [10, 12],
      [20, 20.5],
      [30, 31],
      [25, 24],
    ];
    const [panel] = drawn([{ name: 'before' }, { name: 'after' }], rows, {
      kind: 'pairs',
      columns: ['before', 'after'],
    }).chart().panels;
    const [x, low] = panel!.bands[0]!.at[0]!;
    expect(x - low).toBeCloseTo(z * sd(rows.map(([a, b]) => b! - a!)), 9);
  });
});

test('the standard error may be a formula: it comes in the unit of calculation and is shown in the column’s', () => {
  const session = Session.create();
  session.execute({
    do: 'add-sheet',
    name: 'data',
    columns: [
      { name: 'before', kind: 'number', unit: 'mm' },
      { name: 'after', kind: 'number', unit: 'mm' },
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'data',
    row: 0,
    columns: ['before', 'after'],
    texts: [
      ['100', '103'],
      ['110', '111'],
    ],
  });
  const chart = { title: 'c', kind: 'pairs', sheet: 'data', columns: ['before', 'after'] };
  const band = (sem: string) => {
    session.execute({ do: 'set-part', part: 'charts', key: 'c', value: { ...chart, sem } });
    return session.ask((context) => chartOf(context, 'c')).panels[0]!.bands[0]!.at[0]!;
  };
  // .05 cm is .5 mm; MDC = z · √2 · SEM (Weir 2005).
  const [x, low] = band('0.1 / 2');
  expect(x - low).toBeCloseTo(z * Math.SQRT2 * 0.5, 9);
  expect(() => band('data.before + "x"')).toThrow(/The standard error of this chart/);
});

describe('a trend', () => {
  const columns = [
    { name: 'athlete', kind: 'text' },
    { name: 'on_day', kind: 'date' },
    { name: 'height' },
  ] as const;
  const rows = [
    ['Ada', '2025-01-01', 10],
    ['Ada', '2025-01-08', 11],
    ['Ada', '2025-01-15', ''],
    ['Ada', '2025-01-22', 12],
    ['Ada', '2025-01-29', 13],
    ['Ada', '2025-06-01', 20],
    ['Ben', '2025-01-02', 5],
  ];

  test('leaves gaps where a value is missing or too many days lie between', () => {
    const { panels } = drawn(columns, rows, {
      kind: 'trend',
      columns: ['on_day', 'height'],
      by: 'athlete',
    }).chart();
    expect(panels[0]!.lines.map(({ at }) => at.map(([, y]) => y))).toEqual([
      [10, 11],
      [12, 13],
    ]);
    expect(panels[0]!.points).toHaveLength(6);
  });

  test('draws small multiples, one an athlete, each with the band about the first value', () => {
    const { panels } = drawn(columns, rows, {
      kind: 'trend',
      columns: ['on_day', 'height'],
      by: 'athlete',
      panels: true,
      sem: 1,
    }).chart();
    expect(panels.map(({ title }) => title)).toEqual(['Ada', 'Ben']);
    const [, low, high] = panels[0]!.bands[0]!.at[0]!;
    expect(low).toBeCloseTo(10 - z * Math.SQRT2, 9);
    expect(high).toBeCloseTo(10 + z * Math.SQRT2, 9);
  });
});

test('the spread by group shows medians and quartiles as halfway counting gives them', () => {
  const rows = [...[1, 2, 3, 4, 5].map((v): Row => ['a', v]), ...[10, 20, 30].map((v): Row => ['b', v])];
  const { panels, groups } = drawn([{ name: 'team', kind: 'text' }, { name: 'value_of' }], rows, {
    kind: 'distribution',
    columns: ['value_of'],
    by: 'team',
  }).chart();
  expect(groups).toEqual(['a', 'b']);
  // Hyndman & Fan 1996, type 7: at 1 + (n − 1) p of the sorted values: 2, 3, 4 of 1…5 and 15, 20, 25 of 10, 20, 30.
  expect(panels[0]!.levels.map(({ x, y }) => [x, y])).toEqual([
    [0, 2],
    [0, 3],
    [0, 4],
    [1, 15],
    [1, 20],
    [1, 25],
  ]);
});

test('the load by week sums Monday to Sunday, keeps empty weeks and gives Foster’s monotony', () => {
  // 2025-01-06 is a Monday.
  const daily = [360, 540, 0, 480, 300, 720, 0];
  const rows: Row[] = [
    ['2025-01-01', 100],
    ...daily.map((value, day): Row => [`2025-01-${String(6 + day).padStart(2, '0')}`, value]),
    ['2025-01-22', 250],
  ];
  const { panels } = drawn([{ name: 'on_day', kind: 'date' }, { name: 'effort' }], rows, {
    kind: 'load',
    columns: ['on_day', 'effort'],
  }).chart();
  expect(panels[0]!.points.map(({ y }) => y)).toEqual([100, sum(daily), 0, 250]);
  // A week without a row is not a week of rest that was logged.
  expect(panels[0]!.points.map(({ note }) => note === 'nothing logged')).toEqual([false, false, true, false]);
  // Foster 1998, Med Sci Sports Exerc 30:1164–1168: mean of the daily loads over their SD (divisor 6).
  const note = panels[0]!.points[1]!.note!;
  expect(Number(note.replace('monotony ', ''))).toBeCloseTo(mean(daily) / sd(daily), 2);
});

test('the axis of a measure that is never below zero starts at zero; one with negative values goes below', () => {
  const lowest = (values: readonly number[]) =>
    spansOf(
      drawn(
        [{ name: 'on_day', kind: 'date' }, { name: 'up' }],
        values.map((value, row): Row => [`2025-03-0${row + 1}`, value]),
        { kind: 'trend', columns: ['on_day', 'up'] },
      ).chart(),
    ).y[0];
  expect(lowest([0, 100, 50, 20])).toBe(0);
  expect(lowest([0, 0, 0, 0])).toBe(0);
  expect(lowest([-10, 100, 50, 20])).toBeLessThan(-10);
});

describe('a chart that cannot be drawn', () => {
  const rows = [[1, 2]];
  test.each<[string, Record<string, Json>, RegExp]>([
    ['names a column that is gone', { kind: 'scatter', columns: ['across', 'gone'] }, /no column "gone"/],
    ['has too few columns', { kind: 'scatter', columns: ['across'] }, /takes 2 columns/],
    ['is of no known kind', { kind: 'pie', columns: ['across'] }, /cannot be read at "kind"/],
    [
      'has a sheet that is gone',
      { kind: 'scatter', columns: ['across', 'up'], sheet: 'other' },
      /no longer in the book/,
    ],
    ['asks a number for a date', { kind: 'trend', columns: ['across', 'up'] }, /not a column of dates/],
  ])('is refused with a sentence when it %s', (_, chart, says) => {
    expect(() => drawn([{ name: 'across' }, { name: 'up' }], rows, chart).chart()).toThrow(says);
  });

  test('is listed only when it can be read, and adding one is taken back by undo', () => {
    const { session } = drawn([{ name: 'across' }, { name: 'up' }], rows, {
      kind: 'scatter',
      columns: ['across', 'up'],
    });
    session.execute({ do: 'set-part', part: 'charts', key: 'bad', value: { kind: 'pie' } });
    expect(session.outline().charts).toEqual([{ key: 'c', title: 'A chart', kind: 'scatter' }]);
    session.undo();
    session.undo();
    expect(session.outline().charts).toEqual([]);
  });
});

import { HyperFormula } from 'hyperformula';
import { applyEdit } from '../../src/book/apply.ts';
import type { Edit } from '../../src/book/edit.ts';
import { cellEngineSettings } from '../../src/calc/cell-engine/settings.ts';
import { createCalculation } from '../../src/calc/index.ts';
import { computed, inputs, squad, summaries } from './book.ts';
import { type Bench, cost, type Line, median, percentile, took } from './measure.ts';

const EDITS = 120;
/** Edits before those that count: the first few make the program fast. */
const WARM = 20;
/** Rows that hyperformula is given; it recomputes the figures over the whole columns after each edit, as it must. */
const CELL_ROWS = 5000;

function exhaust<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

export function bench(given: number | undefined): Bench {
  const rows = given ?? 100_000;
  const book = squad(rows);
  const calculation = createCalculation(book);
  const first = took(() => exhaust(calculation.all()));
  const numbers = (name: string): Float64Array => calculation.column('squad', name).numbers;
  const figure = (row: number): unknown => calculation.value('figures', 'value', row);

  let state = 5;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const edit = (change: Edit, times: number[], costs: number[]): void => {
    costs.push(
      cost(() => {
        times.push(took(() => exhaust(calculation.update(applyEdit(book, change).changes))));
      }),
    );
  };
  let wrong = 0;
  let checked = 0;
  const check = (right: boolean): void => {
    checked++;
    if (!right) wrong++;
  };
  const close = (a: unknown, b: number): boolean =>
    typeof a === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));

  /** Figures by plain loops over the inputs, in two passes. */
  const expected = (): number[] => {
    const squats = numbers('squat');
    const masses = numbers('mass');
    const relative = squats.map((s, i) => s / masses[i]!);
    const mean = relative.reduce((sum, r) => sum + r, 0) / rows;
    const spread = Math.sqrt(relative.reduce((sum, r) => sum + (r - mean) ** 2, 0) / (rows - 1));
    const strong = relative.reduce((n, r) => n + (r >= 1.5 ? 1 : 0), 0);
    return [mean, spread, strong];
  };

  const cellTimes: number[] = [];
  const cellCosts: number[] = [];
  for (let k = 0; k < EDITS + WARM; k++) {
    const [column, least, most] = inputs[[5, 4, 0, 1][k % 4]!]!;
    const row = Math.floor(random() * rows);
    const value = Math.round((least + random() * (most - least)) * 10) / 10;
    edit({ do: 'put-cells', sheet: 'squad', row, columns: [column], cells: [[value]] }, cellTimes, cellCosts);
    const relative = numbers('squat')[row]! / numbers('mass')[row]!;
    check(numbers(column)[row] === value);
    check(numbers('relative')[row] === relative);
    check(numbers('grade')[row] === (relative >= 1.5 ? 2 : relative >= 1 ? 1 : 0));
    if (k % 20 === 0)
      expected().forEach((value, f) => {
        check(close(figure(f), value));
      });
  }

  const namedTimes: number[] = [];
  const namedCosts: number[] = [];
  for (let k = 0; k < EDITS / 2 + WARM; k++) {
    const lift = Math.round(random() * 30) / 10;
    const row = summaries.length;
    edit(
      { do: 'put-cells', sheet: 'figures', row, columns: ['value'], cells: [[lift]] },
      namedTimes,
      namedCosts,
    );
    for (let j = 0; j < rows; j += 997) {
      check(numbers('target')[j] === numbers('squat')[j]! + lift * 2.5);
      check(numbers('with_belt')[j] === numbers('squat')[j]! * (1 + lift / 100));
    }
  }

  const cells = inCells(Math.min(rows, CELL_ROWS));
  const lines: Line[] = [
    {
      work: 'one input cell changed, until all values are current',
      ...summary(cellTimes, cellCosts),
      against: [
        {
          what: 'hyperformula, a formula a cell',
          ms: (cells * rows) / Math.min(rows, CELL_ROWS),
          note: `${Math.min(rows, CELL_ROWS).toLocaleString('en')} rows took ${cells.toFixed(1)} ms, scaled in proportion; without the two LEAN columns`,
        },
        {
          what: 'two plain passes for the same five figures',
          ms: plainFigures(numbers('squat'), numbers('mass')),
        },
      ],
      target: 'p95 ≤ 5 ms',
      checked,
      wrong,
    },
    {
      work: 'a named cell changed that every row of 3 columns reads',
      ...summary(namedTimes, namedCosts),
      target: 'p95 ≤ 60 ms',
      checked,
      wrong,
    },
  ];
  return {
    name: 'edit',
    rows,
    lines,
    notes: [`First calculation of the book: ${first.toFixed(0)} ms.`],
  };
}

const summary = (times: readonly number[], costs: readonly number[]) => ({
  ms: median(times.slice(WARM)),
  p95: percentile(times.slice(WARM), 0.95),
  cpu: median(costs.slice(WARM)),
  p95cpu: percentile(costs.slice(WARM), 0.95),
});

/** Mean, spread, a count and two largest values: what the figures cost when nothing has to be looked up or kept. */
function plainFigures(squats: Float64Array, masses: Float64Array): number {
  const times: number[] = [];
  let sink = 0;
  for (let k = 0; k < 30; k++)
    times.push(
      took(() => {
        let sum = 0;
        let strong = 0;
        let most = 0;
        const n = squats.length;
        for (let i = 0; i < n; i++) {
          const r = squats[i]! / masses[i]!;
          sum += r;
          if (r >= 1.5) strong++;
          if (r > most) most = r;
        }
        const mean = sum / n;
        let squares = 0;
        for (let i = 0; i < n; i++) squares += (squats[i]! / masses[i]! - mean) ** 2;
        sink += squares + strong + most;
      }),
    );
  return sink > 0 ? median(times) : 0;
}

/** The same sheet as cells: milliseconds for one edit of an input. */
function inCells(rows: number): number {
  const plain = computed.filter(([name]) => !name.startsWith('lean'));
  const names = [...inputs.map(([name]) => name), ...plain.map(([name]) => name)];
  const letter = (name: string): string => {
    const at = names.indexOf(name);
    return at < 26 ? String.fromCharCode(65 + at) : `A${String.fromCharCode(65 + at - 26)}`;
  };
  const formulaAt = (formula: string, row: number): string =>
    formula
      .replace(/\bstandard_lift\b/g, 'figures!$A$9')
      .replace(/\b[a-z_]+(_\d)?\b/g, (word) => (names.includes(word) ? `${letter(word)}${row + 1}` : word));
  const content = Array.from({ length: rows }, (_, row): (number | string)[] => [
    ...inputs.map(
      ([, least, most], k) => least + ((row * 7919 + k * 104_729) % 1000) * ((most - least) / 1000),
    ),
    ...plain.map(([, formula]) => `=${formulaAt(formula, row)}`),
  ]);
  const figures = summaries
    .filter((formula) => !formula.includes('lean'))
    .map((formula) => [
      `=${formula.replace(/squad\.(\w+)/g, (_, name: string) => `squad!${letter(name)}1:${letter(name)}${rows}`)}`,
    ]);
  while (figures.length < 8) figures.push(['']);
  figures.push(['1.5']);
  const engine = HyperFormula.buildFromSheets({ squad: content, figures }, cellEngineSettings);
  const times: number[] = [];
  for (let k = 0; k < 30; k++)
    times.push(took(() => engine.setCellContents({ sheet: 0, row: (k * 131) % rows, col: 5 }, 100 + k)));
  engine.destroy();
  return median(times);
}

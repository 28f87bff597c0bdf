import { HyperFormula } from 'hyperformula';
import { Kind, type Range } from '../../functions/core/value.ts';
import { cellEngineSettings } from '../../src/calc/cell-engine/settings.ts';
import type { Source } from '../../src/calc/plan/api.ts';
import { compile } from '../../src/calc/plan/compile.ts';
import { call, literal, type Made, rowOf, whole } from './made.ts';
import { type Bench, type Line, type Times, timed, took } from './measure.ts';
import { benchLog } from './train-log.ts';

const ATHLETES = 200;
/** What hyperformula is given; its time is scaled up in proportion to rows of the log and to formulas. */
const CELL_ROWS = 20_000;
const CELL_ATHLETES = 5;
const LOOKUP_ROWS = 5000;
const FROM = 45_300;

interface Log {
  readonly rows: number;
  readonly athletes: readonly string[];
  readonly key: Int32Array;
  readonly names: readonly string[];
  readonly days: Float64Array;
  readonly measures: readonly Float64Array[];
}

/** Sessions as they are written down: by day, athletes as they come, five measures each. */
function makeLog(rows: number): Log {
  let state = 4711;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const athletes = Array.from({ length: ATHLETES }, (_, i) => `Lifter ${i + 1}`);
  const key = Int32Array.from({ length: rows }, () => Math.floor(random() * ATHLETES));
  return {
    rows,
    athletes,
    key,
    // texts of an import are separate objects, though equal
    names: Array.from(key, (k) => ['Lifter', k + 1].join(' ')),
    days: Float64Array.from({ length: rows }, (_, i) => 45_000 + Math.floor((i / rows) * 600)),
    measures: Array.from({ length: 5 }, () =>
      Float64Array.from({ length: rows }, () => Math.round(random() * 6000) / 10),
    ),
  };
}

const numbersOf = (numbers: Float64Array, kind: Kind = Kind.number): Range => ({
  rows: numbers.length,
  columns: 1,
  kinds: new Uint8Array(numbers.length).fill(kind),
  numbers,
  texts: null,
  errors: null,
});
const textsOf = (texts: readonly string[]): Range => ({
  rows: texts.length,
  columns: 1,
  kinds: new Uint8Array(texts.length).fill(Kind.text),
  numbers: new Float64Array(texts.length),
  texts,
  errors: null,
});

const logColumns = ['who', 'day', 'm1', 'm2', 'm3', 'm4', 'm5'];
const sheetColumns: Readonly<Record<string, readonly string[]>> = {
  log: logColumns,
  roster: ['name', 'body'],
  sheet: ['who'],
};

/** New column objects, so that no index of them stands yet. */
function sourceOf(log: Log, asking: readonly string[], body: Float64Array): Source {
  const columns: Readonly<Record<string, Range>> = {
    'log who': textsOf(log.names),
    'log day': numbersOf(log.days, Kind.date),
    ...Object.fromEntries(log.measures.map((m, k) => [`log m${k + 1}`, numbersOf(m)])),
    ' who': textsOf(asking),
    'roster name': textsOf(log.athletes),
    'roster body': numbersOf(body),
  };
  return { column: (sheet, column) => columns[`${sheet} ${column}`]!, cell: () => null };
}

class Filled {
  readonly kinds: Uint8Array;
  readonly numbers: Float64Array;
  constructor(rows: number) {
    this.kinds = new Uint8Array(rows);
    this.numbers = new Float64Array(rows);
  }
  set(row: number): void {
    this.kinds[row] = Kind.error;
  }
}

/** A monitoring sheet: ten figures of each athlete. */
const formulas = (rows: number): Made[] => {
  const who = whole('log', 'who', rows);
  const since = [whole('log', 'day', rows), literal(`>=${FROM}`)];
  const measure = (k: number): Made => whole('log', `m${k}`, rows);
  return [
    ...[1, 2, 3].map((k) => call('SUMIFS', measure(k), who, rowOf('who'))),
    ...[4, 5].map((k) => call('SUMIFS', measure(k), who, rowOf('who'), ...since)),
    ...[1, 2].map((k) => call('AVERAGEIF', who, rowOf('who'), measure(k))),
    call('COUNTIFS', who, rowOf('who'), ...since),
    call('MAXIFS', measure(1), who, rowOf('who')),
    call('MINIFS', measure(2), who, rowOf('who'), ...since),
  ];
};

/** The same by one pass over the log for each figure, with the athlete's number at hand instead of the name. */
function passes(log: Log): Float64Array[] {
  const { key, days, measures, rows } = log;
  const sums = (values: Float64Array, from: number): Float64Array => {
    const out = new Float64Array(ATHLETES);
    for (let i = 0; i < rows; i++) if (days[i]! >= from) out[key[i]!]! += values[i]!;
    return out;
  };
  const counts = (from: number): Float64Array => {
    const out = new Float64Array(ATHLETES);
    for (let i = 0; i < rows; i++) if (days[i]! >= from) out[key[i]!]!++;
    return out;
  };
  const means = (values: Float64Array): Float64Array => {
    const out = new Float64Array(ATHLETES);
    const n = new Float64Array(ATHLETES);
    for (let i = 0; i < rows; i++) {
      out[key[i]!]! += values[i]!;
      n[key[i]!]!++;
    }
    return out.map((sum, k) => sum / n[k]!);
  };
  const largest = (values: Float64Array): Float64Array => {
    const out = new Float64Array(ATHLETES).fill(Number.NEGATIVE_INFINITY);
    for (let i = 0; i < rows; i++) if (values[i]! > out[key[i]!]!) out[key[i]!] = values[i]!;
    return out;
  };
  const smallest = (values: Float64Array, from: number): Float64Array => {
    const out = new Float64Array(ATHLETES).fill(Number.POSITIVE_INFINITY);
    for (let i = 0; i < rows; i++)
      if (days[i]! >= from && values[i]! < out[key[i]!]!) out[key[i]!] = values[i]!;
    return out;
  };
  return [
    ...[0, 1, 2].map((k) => sums(measures[k]!, 0)),
    ...[3, 4].map((k) => sums(measures[k]!, FROM)),
    ...[0, 1].map((k) => means(measures[k]!)),
    counts(FROM),
    largest(measures[0]!),
    smallest(measures[1]!, FROM),
  ];
}

/** hyperformula on the same formulas; milliseconds beyond building the values alone, and the answers. */
function inCells(
  sheets: Readonly<Record<string, (string | number)[][]>>,
  texts: readonly string[][],
): { ms: number; values: unknown[][] } {
  const plain = took(() => HyperFormula.buildFromSheets(sheets, cellEngineSettings).destroy());
  const asking = sheets.sheet!.map((line, row) => [...line, ...texts[row]!.map((text) => `=${text}`)]);
  let engine!: HyperFormula;
  const all = took(() => {
    engine = HyperFormula.buildFromSheets({ ...sheets, sheet: asking }, cellEngineSettings);
  });
  const values = engine.getSheetValues(engine.getSheetId('sheet')!).map((line) => line.slice(1));
  engine.destroy();
  return { ms: Math.max(0, all - plain), values };
}

const letterIn = (column: string): string => {
  for (const columns of Object.values(sheetColumns)) {
    const at = columns.indexOf(column);
    if (at >= 0) return String.fromCharCode(65 + at);
  }
  return 'A';
};

function monitoring(log: Log): Line {
  const made = formulas(log.rows);
  const body = new Float64Array(ATHLETES);
  const outs = made.map(() => new Filled(ATHLETES));
  let source = sourceOf(log, log.athletes, body);
  const kept = sourceOf(log, log.athletes, body);
  let expected: Float64Array[] = [];
  const compute = (from: Source) => (): void =>
    made.forEach((formula, k) => {
      compile(formula.bound).run(from, undefined, outs[k]!);
    });
  const [plan, again, pass] = timed(
    12,
    {
      fresh: () => {
        source = sourceOf(log, log.athletes, body);
      },
      work: () => compute(source)(),
    },
    // the indexes of the log stand: what the sheet costs after an edit of the roster
    { work: compute(kept) },
    {
      work: () => {
        expected = passes(log);
      },
    },
  ) as [Times, Times, Times];

  const few = makeLog(Math.min(log.rows, CELL_ROWS));
  const cells = inCells(
    {
      log: Array.from(few.names, (name, i) => [name, few.days[i]!, ...few.measures.map((m) => m[i]!)]),
      sheet: few.athletes.slice(0, CELL_ATHLETES).map((name) => [name]),
    },
    few.athletes
      .slice(0, CELL_ATHLETES)
      .map((_, row) => formulas(few.rows).map((f) => f.text(letterIn, row))),
  );
  const fewExpected = passes(few);
  let wrong = 0;
  let checked = 0;
  const check = (right: boolean): void => {
    checked++;
    if (!right) wrong++;
  };
  made.forEach((_, k) => {
    for (let a = 0; a < ATHLETES; a++)
      check(outs[k]!.kinds[a] === Kind.number && outs[k]!.numbers[a] === expected[k]![a]);
    for (let a = 0; a < CELL_ATHLETES; a++) check(cells.values[a]![k] === fewExpected[k]![a]);
  });
  const scale = (log.rows / few.rows) * (ATHLETES / CELL_ATHLETES);
  return {
    work: `${ATHLETES} athletes × ${made.length} conditional figures`,
    ...plan,
    against: [
      { what: 'one pass over the log a figure, keys as integers', ...pass },
      { what: 'the same again, indexes of the log at hand', ...again },
      {
        what: 'hyperformula, a formula a cell',
        ms: cells.ms * scale,
        note: `${CELL_ATHLETES} athletes over ${few.rows.toLocaleString('en')} rows took ${cells.ms.toFixed(0)} ms, scaled in proportion`,
      },
    ],
    target: '≤ 5 × one integer-key pass a figure, ≥ 500 × faster than hyperformula',
    checked,
    wrong,
  };
}

function lookups(log: Log): Line {
  const body = Float64Array.from({ length: ATHLETES }, (_, k) => 50 + (k % 60));
  const formula = call(
    'XLOOKUP',
    rowOf('who'),
    whole('roster', 'name', ATHLETES),
    whole('roster', 'body', ATHLETES),
  );
  const out = new Filled(log.rows);
  const expected = new Float64Array(log.rows);
  let source = sourceOf(log, log.names, body);
  const [plan, loop] = timed(
    12,
    {
      fresh: () => {
        source = sourceOf(log, log.names, body);
      },
      work: () => compile(formula.bound).run(source, undefined, out),
    },
    {
      work: () => {
        const places = new Map(log.athletes.map((name, k) => [name, k]));
        for (let i = 0; i < log.rows; i++) expected[i] = body[places.get(log.names[i]!)!]!;
      },
    },
  ) as [Times, Times];
  const few = Math.min(LOOKUP_ROWS, log.rows);
  const cells = inCells(
    {
      roster: log.athletes.map((name, k) => [name, body[k]!]),
      sheet: log.names.slice(0, few).map((name) => [name]),
    },
    Array.from({ length: few }, (_, row) => [formula.text(letterIn, row)]),
  );
  let wrong = 0;
  for (let i = 0; i < log.rows; i++) if (out.numbers[i] !== expected[i]) wrong++;
  for (let i = 0; i < few; i++) if (cells.values[i]![0] !== expected[i]) wrong++;
  return {
    work: `XLOOKUP of every row in a roster of ${ATHLETES}`,
    ...plan,
    against: [
      { what: 'a loop over a Map', ...loop },
      {
        what: 'hyperformula, a formula a cell',
        ms: (cells.ms * log.rows) / few,
        note: `${few.toLocaleString('en')} rows took ${cells.ms.toFixed(0)} ms, scaled in proportion`,
      },
    ],
    target: '≤ 10 × a loop over a Map',
    checked: log.rows + few,
    wrong,
  };
}

/** The twelve columns of a monitoring sheet, each called for every athlete; always over a log of its own of 100,000 rows. */
function training(): Line {
  const { all, columns, rows, athletes, wrong } = benchLog();
  const dearest = columns.toSorted((a, b) => b.ratio - a.ratio)[0]!;
  return {
    work: `${athletes} athletes × ${columns.length} TRAIN columns, ${rows.toLocaleString('en')} rows`,
    ms: all.milliseconds,
    against: [
      { what: 'one plain pass over the log a column', ms: all.pass },
      {
        what: 'the dearest column, which builds the index',
        ms: dearest.milliseconds,
        note: `${dearest.column}, ${dearest.ratio.toFixed(1)} passes by itself`,
      },
    ],
    target: '≤ 10 × one pass a column',
    checked: athletes * columns.length,
    wrong,
  };
}

export function bench(given: number | undefined): Bench {
  const log = makeLog(given ?? 100_000);
  return {
    name: 'log',
    rows: log.rows,
    lines: [monitoring(log), lookups(log), training()],
    notes: [
      'Columns are new objects in every run, so each builds its indexes; the median leaves the first run out.',
    ],
  };
}

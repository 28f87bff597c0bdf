import { type CellValue, DetailedCellError, FunctionPlugin, HyperFormula } from 'hyperformula';
import { invoke } from '../../functions/core/invoke.ts';
import { isIssue } from '../../functions/core/issue.ts';
import { type Argument, Kind, type Outcome, type Range } from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';
import { cellEngineSettings } from '../../src/calc/cell-engine/settings.ts';
import type { Source } from '../../src/calc/plan/api.ts';
import { compile } from '../../src/calc/plan/compile.ts';
import { binary, call, literal, type Made, rowOf } from './made.ts';
import { type Bench, type Line, type Times, timed, took } from './measure.ts';

const COLUMNS = 10;
/** Rows that hyperformula is given; its time is scaled up in proportion, which favours it. */
const CELL_ROWS = 20_000;

type Numbers = Readonly<Record<string, Float64Array>>;

/** A roster of plausible lifters: lengths in cm, ankle in degrees. */
function roster(rows: number): Numbers {
  let state = 12345;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const column = (least: number, most: number): Float64Array =>
    Float64Array.from({ length: rows }, () => Math.round((least + random() * (most - least)) * 10) / 10);
  return {
    femur: column(36, 46),
    tibia: column(36, 46),
    trunk: column(46, 58),
    ankle: column(30, 48),
    lift: column(0, 4),
    mass: column(50, 110),
  };
}

const rangeOfNumbers = (numbers: Float64Array): Range => ({
  rows: numbers.length,
  columns: 1,
  kinds: new Uint8Array(numbers.length).fill(Kind.number),
  numbers,
  texts: null,
  errors: null,
});

/** The columns as the book hands them out; new objects each time, so that nothing is remembered of them. */
function sourceOf(numbers: Numbers): Source {
  const ranges = new Map(Object.entries(numbers).map(([name, column]) => [name, rangeOfNumbers(column)]));
  return {
    column: (_sheet, column) => ranges.get(column)!,
    cell: (_sheet, column, row) => ranges.get(column)!.numbers[row]!,
  };
}

class Filled {
  readonly kinds: Uint8Array;
  readonly numbers: Float64Array;
  constructor(rows: number) {
    this.kinds = new Uint8Array(rows);
    this.numbers = new Float64Array(rows);
  }
  set(row: number, value: unknown): void {
    this.kinds[row] = isIssue(value) ? Kind.error : Kind.text;
  }
}

/** Formulas of the ten columns, and the same as a plain loop over arrays. */
interface Work {
  readonly name: string;
  readonly formulas: readonly Made[];
  readonly loop: (numbers: Numbers, out: Float64Array, column: number) => void;
  readonly target: string;
}

const placements = ['high-bar', 'low-bar'];
const lean = registry.get('LEAN.PARALLEL')!;
const kernel = lean.compute as unknown as (...args: unknown[]) => Outcome;

const leaning: Work = {
  name: 'LEAN.PARALLEL of six arguments',
  formulas: Array.from({ length: COLUMNS }, (_, k) =>
    call(
      'LEAN.PARALLEL',
      rowOf('femur'),
      rowOf('tibia'),
      rowOf('trunk'),
      rowOf('ankle'),
      binary('*', rowOf('lift'), literal((k + 1) / 10)),
      literal(placements[k % 2]!),
    ),
  ),
  loop: ({ femur, tibia, trunk, ankle, lift }, out, k) => {
    const placement = placements[k % 2];
    const share = (k + 1) / 10;
    for (let i = 0; i < out.length; i++) {
      const r = kernel(
        femur![i],
        tibia![i],
        trunk![i],
        ankle![i],
        lift![i]! * share,
        placement,
        undefined,
        0,
      );
      out[i] = typeof r === 'number' ? r : Number.NaN;
    }
  },
  target: '≤ 2.5 × the plain loop, ≥ 100 × faster than a formula a cell',
};

const arithmetic: Work = {
  name: 'arithmetic, four operators',
  formulas: Array.from({ length: COLUMNS }, (_, k) =>
    binary(
      '-',
      binary('/', binary('*', binary('+', rowOf('femur'), rowOf('tibia')), rowOf('mass')), literal(k + 2)),
      rowOf('trunk'),
    ),
  ),
  loop: ({ femur, tibia, trunk, mass }, out, k) => {
    const divisor = k + 2;
    for (let i = 0; i < out.length; i++)
      out[i] = ((femur![i]! + tibia![i]!) * mass![i]!) / divisor - trunk![i]!;
  },
  target: '≤ 10 × the plain loop, ≥ 300 × faster than a formula a cell',
};

/** Hands our functions to hyperformula. */
class Domain extends FunctionPlugin {
  static override implementedFunctions = {
    'LEAN.PARALLEL': {
      method: 'lean',
      parameters: [{ argumentType: 'ANY' as never, optionalArg: true }],
      repeatLastArgs: 1,
    },
  };
  lean(tree: { args: never[] }, state: Parameters<FunctionPlugin['evaluateAst']>[1]): number {
    const given = tree.args.map((arg) => this.evaluateAst(arg, state) as unknown as Argument);
    return invoke(lean, given) as number;
  }
}

/** The same formulas in hyperformula, a formula a cell. */
function inCells(work: Work, numbers: Numbers, rows: number): { ms: number; values: CellValue[][] } {
  const names = Object.keys(numbers);
  const letter = (name: string): string => String.fromCharCode(65 + names.indexOf(name));
  const content = Array.from({ length: rows }, (_, row) => [
    ...names.map((name): number | string => numbers[name]![row]!),
    ...work.formulas.map((formula) => `=${formula.text(letter, row)}`),
  ]);
  const plain = content.map((line) => line.slice(0, names.length));
  // what the values alone cost is not the formulas' doing
  const values = took(() => HyperFormula.buildFromArray(plain, cellEngineSettings).destroy());
  let engine!: HyperFormula;
  const all = took(() => {
    engine = HyperFormula.buildFromArray(content, cellEngineSettings);
  });
  const sheet = engine.getSheetValues(0).map((line) => line.slice(names.length));
  engine.destroy();
  return { ms: Math.max(0, all - values), values: sheet };
}

function measure(work: Work, numbers: Numbers, rows: number): Line {
  const outs = work.formulas.map(() => new Filled(rows));
  const loops = work.formulas.map(() => new Float64Array(rows));
  let source = sourceOf(numbers);
  const [plan, loop] = timed(
    12,
    {
      fresh: () => {
        source = sourceOf(numbers);
      },
      work: () =>
        work.formulas.forEach((formula, k) => {
          compile(formula.bound).run(source, undefined, outs[k]!);
        }),
    },
    {
      work: () =>
        loops.forEach((out, k) => {
          work.loop(numbers, out, k);
        }),
    },
  ) as [Times, Times];

  const few = Math.min(rows, CELL_ROWS);
  const cells = inCells(work, numbers, few);
  let wrong = 0;
  let checked = 0;
  work.formulas.forEach((_, k) => {
    for (let i = 0; i < rows; i++) {
      const expected = loops[k]![i]!;
      const right = Number.isNaN(expected)
        ? outs[k]!.kinds[i] === Kind.error
        : outs[k]!.kinds[i] === Kind.number && outs[k]!.numbers[i] === expected;
      if (!right) wrong++;
      checked++;
      if (i >= few) continue;
      const theirs = cells.values[i]![k]!;
      const agrees = Number.isNaN(expected)
        ? theirs instanceof DetailedCellError || typeof theirs !== 'number'
        : theirs === expected;
      if (!agrees) wrong++;
      checked++;
    }
  });
  return {
    work: `${COLUMNS} columns, ${work.name}`,
    ...plan,
    against: [
      { what: 'a plain loop over the same arrays', ...loop },
      {
        what: 'hyperformula, a formula a cell',
        ms: (cells.ms * rows) / few,
        note: `${few.toLocaleString('en')} rows took ${cells.ms.toFixed(0)} ms, scaled in proportion`,
      },
    ],
    target: work.target,
    checked,
    wrong,
  };
}

export function bench(given: number | undefined): Bench {
  const rows = given ?? 100_000;
  HyperFormula.registerFunctionPlugin(Domain as never, { enGB: { 'LEAN.PARALLEL': 'LEAN.PARALLEL' } });
  const numbers = roster(rows);
  return {
    name: 'columns',
    rows,
    lines: [measure(leaning, numbers, rows), measure(arithmetic, numbers, rows)],
    notes: [
      'Plans are compiled anew and the columns are new objects in every run; the median leaves the first run out.',
      'hyperformula: building a sheet with formulas, less building it with the values alone.',
    ],
  };
}

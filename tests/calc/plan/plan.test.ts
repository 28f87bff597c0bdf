import { describe, expect, test } from 'vitest';
import { isIssue } from '../../../functions/core/issue.ts';
import { Kind, type Range, rangeOf, type Value, valueAt } from '../../../functions/core/value.ts';
import type { Bound } from '../../../src/calc/ast.ts';
import type { Source } from '../../../src/calc/plan/api.ts';
import { compile, evaluateOnce } from '../../../src/calc/plan/compile.ts';
import { binary, call, literal, type Made, rowOf, whole } from './formulas.ts';
import { Filled } from './run.ts';

const column = (...values: Value[]): Range => rangeOf(values.length, 1, values);
const sourceOf = (columns: Record<string, Range>): Source => ({
  column: (_sheet, name) => columns[name]!,
  cell: (_sheet, name, row) => valueAt(columns[name]!, row),
});
const valuesOf = (formula: Made, columns: Record<string, Range>, rows: number): unknown[] => {
  const out = new Filled(rows);
  compile(formula.bound).run(sourceOf(columns), undefined, out);
  return Array.from({ length: rows }, (_, row) => {
    const value = out.at(row);
    return isIssue(value) ? value.code : value;
  });
};

describe('a plan over columns', () => {
  test('asks a column anew in each run, though its arrays were changed in place', () => {
    const names = column('Ana', 'Bo', 'ana', 'Bo');
    const loads = column(1, 2, 3, 4);
    const asking = column('ana', 'bo');
    const plan = compile(call('SUMIFS', whole('femur', 4), whole('names', 4), rowOf('texts')).bound);
    const columns: Record<string, Range> = { femur: loads, names, texts: asking };
    const out = new Filled(2);
    plan.run(sourceOf(columns), undefined, out);
    expect([out.at(0), out.at(1)]).toEqual([4, 6]);
    loads.numbers[0] = 10;
    columns.femur = { ...loads };
    plan.run(sourceOf(columns), undefined, out);
    expect([out.at(0), out.at(1)]).toEqual([13, 6]);
    (names.texts as string[])[2] = 'Bo';
    columns.names = { ...names };
    plan.run(sourceOf(columns), undefined, out);
    expect([out.at(0), out.at(1)]).toEqual([10, 9]);
  });

  test('leaves rows that are not listed as they are', () => {
    const out = new Filled(3);
    out.set(0, 'kept');
    const columns = { plain: column(1, 2, 3) };
    compile(binary('*', rowOf('plain'), literal(2)).bound).run(sourceOf(columns), Int32Array.of(1), out);
    expect([out.at(0), out.at(1), out.at(2)]).toEqual(['kept', 4, null]);
  });

  test('computes a formula without any row into one row, and an array is refused there', () => {
    const columns = { plain: column(1, 2, 3) };
    const mean = call('AVERAGE', whole('plain', 3));
    expect(valuesOf(mean, columns, 1)).toEqual([2]);
    expect(evaluateOnce(mean.bound, sourceOf(columns))).toBe(2);
    const doubled = binary('*', whole('plain', 3), literal(2));
    expect(valuesOf(doubled, columns, 1)).toEqual(['#SPILL!']);
    expect(evaluateOnce(doubled.bound, sourceOf(columns))).toEqual({
      rows: 3,
      columns: 1,
      values: [2, 4, 6],
    });
  });

  test('keeps dates dates where hyperformula does, and only there', () => {
    const day = column(45_000);
    day.kinds[0] = Kind.date;
    const kindOf = (formula: Made): number => {
      const out = new Filled(1);
      compile(formula.bound).run(sourceOf({ day }), undefined, out);
      return out.kinds[0]!;
    };
    expect(kindOf(binary('+', rowOf('day'), literal(7)))).toBe(Kind.date);
    expect(kindOf(binary('-', rowOf('day'), rowOf('day')))).toBe(Kind.number);
    expect(kindOf(call('EDATE', rowOf('day'), literal(1)))).toBe(Kind.date);
    expect(kindOf(call('YEAR', rowOf('day')))).toBe(Kind.number);
    expect(kindOf(call('IF', literal(true), rowOf('day'), literal(0)))).toBe(Kind.date);
    expect(kindOf(call('XLOOKUP', rowOf('day'), whole('day', 1), whole('day', 1)))).toBe(Kind.date);
  });

  test('says which functions work through a whole column again in each row', () => {
    const slow = (formula: Made): readonly string[] => compile(formula.bound).slow;
    const all = whole('plain', 3);
    expect(slow(call('SUMIFS', all, all, rowOf('plain')))).toEqual([]);
    expect(slow(call('RANK', rowOf('plain'), all))).toEqual([]);
    expect(slow(call('SUM', all))).toEqual([]);
    expect(slow(call('SUMPRODUCT', binary('=', all, rowOf('plain')), all))).toEqual(['SUMPRODUCT']);
  });

  test('answers an unknown function and a wrong count with an error value, never by throwing', () => {
    const columns = { plain: column(1) };
    expect(valuesOf(call('NO.SUCH', rowOf('plain')), columns, 1)).toEqual(['#NAME?']);
    expect(valuesOf(call('IF', rowOf('plain')), columns, 1)).toEqual(['#N/A']);
    expect(valuesOf(call('SQRT'), columns, 1)).toEqual(['#N/A']);
    expect(
      valuesOf(
        { bound: { type: 'local', name: 'x', span: { from: 0, to: 0 } } as Bound, text: () => '' },
        columns,
        1,
      ),
    ).toEqual(['#NAME?']);
  });

  test('works on columns longer than the stack is deep', () => {
    const rows = 300_000;
    const long = rangeOf(
      rows,
      1,
      Array.from({ length: rows }, (_, i) => i + 1),
    );
    const answers = (name: string, ...more: Made[]): unknown =>
      valuesOf(call(name, whole('plain', rows), ...more), { plain: long }, 1)[0];
    // 1 … n: sum n(n + 1)/2, median (n + 1)/2, mean absolute deviation n/4
    expect(answers('SUM')).toBe((rows * (rows + 1)) / 2);
    expect(answers('MEDIAN')).toBe((rows + 1) / 2);
    expect(answers('AVEDEV')).toBeCloseTo(rows / 4, 6);
    expect(answers('CORREL', whole('plain', rows))).toBeCloseTo(1, 9);
    expect(answers('COUNTBLANK')).toBe(0);
    expect(answers('COUNTUNIQUE')).toBe(rows);
    expect(answers('AND')).toBe(true);
    expect(answers('PERCENTILE', literal(0.5))).toBe((rows + 1) / 2);
    expect(answers('MODE')).toBe('#N/A');
  });
});

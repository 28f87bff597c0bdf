import { describe, expect, test } from 'vitest';
import { isIssue } from '../../functions/core/issue.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * Formulas that were seen to keep a formula engine busy for minutes, or to overflow its stack. Here each ends in a value
 * or a sentence, and the rest of the book lives.
 */
/** An inline array as long as a formula allows for two of them, in a row or a column. */
const inline = (mark: ',' | ';'): string =>
  `{${Array.from({ length: 1900 }, (_, i) => (i % 9) + 1).join(mark)}}`;
const [row, down] = [inline(','), inline(';')];

const formulas = [
  'SUM(A1:ZZZ1048576)',
  'COUNTBLANK(s!A1:B1048576)',
  'SORT(s!A1:B1048576)',
  'SEQUENCE(40000,1000)',
  'SUM(SEQUENCE(40000,1000))',
  'SEQUENCE(x*40000,1000)',
  'SEQUENCE(10000,1)*SEQUENCE(1,10000)',
  'SUM(SEQUENCE(10000,1)=SEQUENCE(1,10000))',
  'MMULT(SEQUENCE(10000,1),SEQUENCE(1,10000))',
  `SUM(${row}*${down})`,
  `SUM(POWER(${row},${down}))`,
  `SUM(IF(${row}>3,${down},"x"))`,
  `SUM(POISSON.DIST(${row},${down},TRUE))`,
  `SUM(LEN(TEXT(${row},"0")&${down}))`,
  `IFERROR(SUM(MOD(${row},${down})),"too large")`,
  `SUM(PERCENTILE(SEQUENCE(10000),SEQUENCE(10000)/10000))`,
  'POISSON.DIST(1E9,5E8,TRUE)',
  'CUMIPMT(0.01,1E9,100,1,1E9,0)',
  'BESSELJ(1E9,999)',
  'SEARCH("*a*b*c*d*e*f*g*h*","aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")',
  'SEARCH(REPT("*a",12),REPT("a",3000))',
  'SEARCH(SEARCH(SEARCH("a","ba"),"12"),"123")',
  'COUNTIF(s.x,"*a*b*c*d*e*f*g*h*")',
  'SUBSTITUTE("abc","","x",1)',
  'REPT("x",1000000000)',
  'FACT(1E9)',
  'COMBIN(1E9,5E8)',
  `${'('.repeat(600)}1${')'.repeat(600)}`,
  `${'ABS('.repeat(600)}1${')'.repeat(600)}`,
  `1${'+1'.repeat(4000)}`,
  `LET(a,1,${Array.from({ length: 24 }, (_, i) => `b_${i},${i === 0 ? 'a+a' : `b_${i - 1}+b_${i - 1}`}`).join(',')},b_23)`,
];

describe('a formula that would hang or overflow ends within two seconds, and the book goes on', () => {
  test.each(formulas.map((formula) => [formula.length > 60 ? `${formula.slice(0, 57)}…` : formula, formula]))(
    '%s',
    (_, formula) => {
      const b = new Bench(bookOf({ s: { x: [1, 2, 3], v: [null, null, f('SUM(s.x)')] } }));
      const start = performance.now();
      b.put('s', 'v', 0, f(formula));
      expect(performance.now() - start).toBeLessThan(2000);
      const value = b.calculation.value('s', 'v', 0);
      if (isIssue(value)) expect(b.sentence('s', 'v', 0)).toMatch(/[.?]$/);
      b.put('s', 'x', 0, 10);
      expect(b.value('s', 'v', 2)).toBe(15);
    },
    20_000,
  );
  test('texts that double from cell to cell', () => {
    const cells = Array.from({ length: 40 }, (_, i) => f(i === 0 ? '"0123456789"' : `A${i}&A${i}`));
    const b = new Bench(bookOf({ s: { x: cells } }));
    expect(b.value('s', 'x', 11)).toHaveLength(10 * 2 ** 11);
    expect(b.sentence('s', 'x', 39)).toContain('32,767 characters');
  });
  test('every pair of two long inline arrays is refused with the same words as a free cell and down a column', () => {
    for (const formula of [
      `SUM(${row}*${down})`,
      `SUM(POWER(${row},${down}))`,
      `SUM(IF(${row}>3,${down},1))`,
    ]) {
      const b = new Bench(bookOf({ s: { x: [1], y: formula, v: [f(formula)] } }));
      const said = ['y', 'v'].map((column) => [b.value('s', column, 0), b.sentence('s', column, 0)]);
      expect(said[0]).toEqual([
        '#VALUE!',
        'An array would have more than 1,100,000 cells. Ask for a smaller one.',
      ]);
      expect(said[1]).toEqual(said[0]);
    }
    const b = new Bench(bookOf({ s: { v: [f(`IFERROR(SUM(MOD(${row},${down})),"too large")`)] } }));
    expect(b.value('s', 'v', 0)).toBe('too large');
  });
  test('in a column’s formula too', () => {
    for (const formula of [
      ...['SUBSTITUTE("abc","","x",1)', 'REPT("x",1000000000)', 'SEQUENCE(x*40000,1000)'],
      ...[`SUM(${row}*${down})`, `SUM(MOD(${row},${down}))`, `SUM(IF(${row}>3,${down},x))`],
    ]) {
      const start = performance.now();
      const b = new Bench(bookOf({ s: { x: [1, 2, 3], y: formula, z: 'x+1' } }));
      expect(performance.now() - start).toBeLessThan(2000);
      expect(b.values('s', 'z')).toEqual([2, 3, 4]);
    }
  });
});

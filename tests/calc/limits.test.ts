import { describe, expect, test } from 'vitest';
import { isIssue } from '../../functions/core/issue.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * Formulas that were seen to keep a formula engine busy for minutes, or to overflow its stack. Here each ends in a value
 * or a sentence, and the rest of the book lives.
 */
const formulas = [
  'SUM(A1:ZZZ1048576)',
  'COUNTBLANK(s!A1:B1048576)',
  'SORT(s!A1:B1048576)',
  'SEQUENCE(40000,1000)',
  'SUM(SEQUENCE(40000,1000))',
  'SEQUENCE(x*40000,1000)',
  'SEQUENCE(10000,1)*SEQUENCE(1,10000)',
  'SUM(SEQUENCE(10000,1)=SEQUENCE(1,10000))',
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
  test('in a column’s formula too', () => {
    for (const formula of ['SUBSTITUTE("abc","","x",1)', 'REPT("x",1000000000)', 'SEQUENCE(x*40000,1000)']) {
      const start = performance.now();
      const b = new Bench(bookOf({ s: { x: [1, 2, 3], y: formula, z: 'x+1' } }));
      expect(performance.now() - start).toBeLessThan(2000);
      expect(b.values('s', 'z')).toEqual([2, 3, 4]);
    }
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { issue } from '../../functions/core/issue.ts';
import { functionSentences } from '../../functions/core/sentence.ts';
import { calcSentences, issueOf, sentenceOf } from '../../src/calc/sentences.ts';
import { Bench, bookOf } from './book-for-test.ts';

const folder = join(import.meta.dirname, '../../src/calc');
const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(join(folder, file), 'utf8'));

describe('sentences of the formula language', () => {
  test('exist for every reason that its code gives', () => {
    const given = texts.flatMap((text) => [
      ...[...text.matchAll(/\bissue\(\s*[^,]+,\s*'([a-z-]+)'/g)].map((m) => m[1]!),
      ...[...text.matchAll(/\brefuse\(\s*[^,]+(?:\}[^,]*)?,\s*'([a-z-]+)'/g)].map((m) => m[1]!),
    ]);
    expect(given.length).toBeGreaterThan(40);
    const silent = [...new Set(given)].filter((r) => !(r in calcSentences) && !(r in functionSentences));
    expect(silent).toEqual([]);
  });
  test('are each given for something', () => {
    const all = texts.join('\n');
    const unused = Object.keys(calcSentences).filter(
      (r) => all.split(`'${r}'`).length < 3 && !/^[a-z]+$/.test(r),
    );
    expect(unused).toEqual([]);
  });
  test('do not repeat those of the functions', () => {
    expect(Object.keys(calcSentences).filter((r) => r in functionSentences)).toEqual([]);
  });
  test('name what is left of a deleted column', () => {
    const span = { from: 0, to: 1 };
    expect(sentenceOf(issueOf({ type: 'error', code: '#REF!', lost: 'femur', span }))).toMatchSnapshot();
    expect(sentenceOf(issueOf({ type: 'error', code: '#N/A', span }))).toMatchSnapshot();
  });
  test('fall back to the code for a reason that nobody knows', () => {
    expect(sentenceOf(issue('#NUM!', 'of-tomorrow'))).toBe('#NUM!: of-tomorrow.');
  });
});

describe('sentences of operators and built-in functions', () => {
  const b = new Bench(bookOf({ s: { x: [1, 2], t: ['a', 'b'] } }));
  test.each([
    'x/0',
    '"a"*2',
    'SQRT(-1)',
    'MATCH(9, s.x, 0)',
    'VLOOKUP(9, s!A1:B2, 2, FALSE)',
    'VLOOKUP(1, s!A1:B2, 5, FALSE)',
    'INDEX(s.x, 9)',
    'DATE("x", 1, 1)',
    'STDEV.S(1)',
    'AVERAGE(s.t)',
    'ROUND(1)',
    'CHOOSE(5, 1)',
    'IFS(FALSE, 1)',
    'REPT("x", 100000)',
    'CORREL(s!A1:A2, s!A1:A1)',
    'FIND("x", "abc")',
    'NA()',
    '10^400',
  ])('%s', (formula) => {
    const value = b.calculation.evaluate(formula, { sheet: 's', column: 'x', row: 0 });
    expect(
      typeof value === 'object' && value && 'code' in value ? `${value.code} ${sentenceOf(value)}` : value,
    ).toMatchSnapshot();
  });
});

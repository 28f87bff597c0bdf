import { describe, expect, test } from 'vitest';
import { patternOf } from '../../src/calc/wildcards.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * OASIS OpenDocument 1.3, part 4 (OpenFormula), 3.4: with HOST-USE-WILDCARDS "?" stands for one character and "*" for any
 * number of characters in searches, "~" escapes them; HOST-SEARCH-CRITERIA-MUST-APPLY-TO-WHOLE-CELL: the whole cell has to
 * match. 4.11.8 (criterion): "=" and "<>" compare texts so. Which rows are expected is counted by hand from that text.
 */
const words = ['Squat', 'squat jump', 'Front squat', 'Press', 'a*b', 'a?b', 'a~b', 'axb', '', null, 42];
const loads = words.map((_, i) => 2 ** i);
/** Rows from 0 as the sum that SUMIF gives. */
const rows = (...of: number[]): number => of.reduce((sum, i) => sum + 2 ** i, 0);
const book = (formula: string): Bench =>
  new Bench(
    bookOf({
      s: { word: { kind: 'text', cells: words }, load: loads, one: loads.map(() => 1) },
      // the same in a short range, which the cell engine reads by itself, in a free cell and in a column
      at: {
        free: [f(formula)],
        short: [f(formula.replaceAll('s.word', 's!A1:A11').replaceAll('s.load', 's!B1:B11'))],
      },
      of: { one: { cells: [1] }, column: { cells: [null], formula } },
    }),
  );
const answers = (formula: string): unknown[] => {
  const b = book(formula);
  return [b.value('at', 'free', 0), b.value('at', 'short', 0), b.value('of', 'column', 0)];
};
const all = (value: unknown): unknown[] => [value, value, value];

describe('wildcards in a criterion', () => {
  test.each([
    ['squat', rows(0)],
    ['squat*', rows(0, 1)],
    ['*squat', rows(0, 2)],
    ['*squat*', rows(0, 1, 2)],
    ['=*SQUAT*', rows(0, 1, 2)],
    ['s*t', rows(0)],
    ['?????', rows(0, 3)],
    ['a?b', rows(4, 5, 6, 7)],
    ['a~?b', rows(5)],
    ['a~*b', rows(4)],
    ['a~~b', rows(6)],
    ['a~b', rows(6)],
    ['*~?*', rows(5)],
    // texts alone, the empty one among them; neither the blank nor the number
    ['*', rows(0, 1, 2, 3, 4, 5, 6, 7, 8)],
    ['?*', rows(0, 1, 2, 3, 4, 5, 6, 7)],
    ['<>*', rows(9, 10)],
    ['<>*squat*', rows(3, 4, 5, 6, 7, 8, 9, 10)],
    ['4?', 0],
  ])('%s', (criterion, sum) => {
    expect(answers(`SUMIF(s.word, "${criterion}", s.load)`)).toEqual(all(sum));
    const count = sum.toString(2).replaceAll('0', '').length;
    expect(answers(`COUNTIF(s.word, "${criterion}")`)).toEqual(all(count));
    expect(answers(`SUMIFS(s.load, s.load, ">0", s.word, "${criterion}")`)).toEqual(all(sum));
    expect(answers(`COUNTIFS(s.load, ">0", s.word, "${criterion}")`)).toEqual(all(count));
    expect(answers(`MAXIFS(s.load, s.word, "${criterion}")`)).toEqual(
      all(sum === 0 ? 0 : 2 ** Math.floor(Math.log2(sum))),
    );
  });
  test('averages and minima', () => {
    expect(answers('AVERAGEIF(s.word, "*squat", s.load)')).toEqual(all(2.5));
    expect(answers('AVERAGEIFS(s.load, s.word, "*squat")')).toEqual(all(2.5));
    expect(answers('MINIFS(s.load, s.word, "*u?t*")')).toEqual(all(1));
  });
  test('a bar is a letter like any other', () => {
    const b = new Bench(
      bookOf({ s: { w: { kind: 'text', cells: ['a|b', 'a', 'b'] } }, at: { z: [f('COUNTIF(s.w, "a|b")')] } }),
    );
    expect(b.value('at', 'z', 0)).toBe(1);
  });
});

describe('wildcards in a lookup', () => {
  test.each([
    ['MATCH("front*", s.word, 0)', 3],
    ['MATCH("?r*", s.word, 0)', 3],
    ['MATCH("a~?b", s.word, 0)', 6],
    ['MATCH("b*", s.word, 0)', '#N/A'],
    ['XMATCH("*jump", s.word, 2)', 2],
    ['XLOOKUP("*squat", s.word, s.load, "none", 2)', 1],
    ['XLOOKUP("*squat", s.word, s.load, "none", 2, -1)', 4],
    ['XLOOKUP("a~*b", s.word, s.load, "none", 2)', 16],
    ['XLOOKUP("*squat", s.word, s.load, "none")', 'none'],
    ['XLOOKUP("a*b", s.word, s.load, "none")', 16],
    ['VLOOKUP("pre*", s!A1:B11, 2, FALSE)', 8],
    ['VLOOKUP("a~?b", s!A1:B11, 2, FALSE)', 32],
    ['VLOOKUP("q*", s!A1:B11, 2, FALSE)', '#N/A'],
    ['HLOOKUP("sq*", s!A1:B11, 4, FALSE)', 'Press'],
  ])('%s', (formula, found) => expect(answers(formula)).toEqual(all(found)));
  test('SEARCH finds where the first match begins', () => {
    expect(answers('SEARCH("u?t", "Front squat")')).toEqual(all(9));
    expect(answers('SEARCH("t*t", "Front squat")')).toEqual(all(5));
    expect(answers('SEARCH("~?", "why?")')).toEqual(all(4));
    expect(answers('SEARCH("x*y", "abc")')).toEqual(all('#VALUE!'));
  });
});

describe('a pattern is read in one pass', () => {
  const hostile = [
    ['*a*a*a*a*b', 'a'.repeat(100_000)],
    ['*a?a?a?a?b', 'a'.repeat(100_000)],
    [`${'*a'.repeat(40)}b`, 'a'.repeat(100_000)],
  ] as const;
  /** A text that counts how many characters are taken from it. */
  const counted = (text: string) => {
    let taken = 0;
    const given = {
      length: text.length,
      *[Symbol.iterator]() {
        for (const letter of text) {
          taken++;
          yield letter;
        }
      },
    };
    return { given: given as unknown as string, taken: () => taken };
  };
  test.each(hostile)('%s', (pattern, text) => {
    const { given, taken } = counted(text);
    expect(patternOf(pattern)!.matches(given)).toBe(false);
    expect(taken()).toBe(text.length);
    expect(patternOf(pattern)!.search(text)).toBe(-1);
    expect(patternOf(pattern)!.matches(`${text}b`)).toBe(true);
  });
  test('agrees with a regular expression on random patterns', () => {
    let seed = 7;
    const below = (n: number): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed % n;
    };
    const some = (letters: string, most: number): string =>
      Array.from({ length: below(most) }, () => letters[below(letters.length)]).join('');
    const different: string[] = [];
    for (let k = 0; k < 5000; k++) {
      // long patterns, over more than one word of bits, with few stars: the regular expression goes back at each
      const long = k % 10 === 0;
      const pattern = long ? `${some('ab?~', 40)}*${some('ab?', 40)}` : some('ab*?~', 8);
      const text = some('ab*?~', long ? 90 : 10);
      const made = patternOf(pattern);
      if (!made) continue;
      const source = pattern.replaceAll(/~([*?~])|\*|\?/g, (sign, escaped) =>
        escaped ? (escaped === '~' ? '~' : `\\${escaped}`) : sign === '*' ? '.*' : '.',
      );
      const fits = long ? pattern.replaceAll('?', 'b').replaceAll('*', text) : text;
      for (const whole of [text, fits]) {
        if (made.matches(whole) !== new RegExp(`^${source}$`).test(whole))
          different.push(`${pattern} = ${whole}`);
        if (made.search(whole) !== whole.search(new RegExp(source))) different.push(`${pattern} in ${whole}`);
      }
    }
    expect(different).toEqual([]);
  });
  test('one character may take two units', () => {
    expect(patternOf('?')!.matches('🏋')).toBe(true);
    expect(patternOf('??')!.matches('🏋')).toBe(false);
    expect(patternOf('b?')!.search('a🏋b🏋')).toBe(3);
  });
});

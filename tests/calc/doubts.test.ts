import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../src/units/dimension.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

const of = (dimension: Dimension, cells = [1, 2]) => ({ dimension, cells });
const columns = {
  femur: of('length', [42, 40]),
  tibia: of('length', [40, 41]),
  mass: of('mass', [80, 90]),
  ankle: of('angle', [35, 40]),
  minutes: of('duration', [60, 50]),
  note: { kind: 'text' as const, cells: ['a', 'b'] },
};
const dimensionOf = (formula: string): unknown => {
  const { meaning } = new Bench(bookOf({ s: columns })).calculation.check(formula, {
    sheet: 's',
    column: 'femur',
  });
  if (!meaning || meaning.is === 'date') return meaning?.is;
  return meaning.is === 'rate' ? `${meaning.dimension} per ${meaning.per}` : meaning.dimension;
};
const doubts = (formula: string, more = {}): readonly (readonly [string, string])[] =>
  new Bench(bookOf({ s: { ...columns, y: { formula, ...more } } })).calculation
    .doubts()
    .map(({ about, sentence }) => [about, sentence]);

/* Dimensional algebra: a sum has the dimension of its parts, a product their product (Maxwell's rule). */
describe('the dimension of a result', () => {
  test.each([
    ['femur + tibia', 'length'],
    ['femur / tibia', undefined],
    ['femur * 2', 'length'],
    ['femur + 2.5', 'length'],
    ['2 * mass - 5%', 'mass'],
    ['femur * tibia / femur', 'length'],
    ['SQRT(femur * tibia)', 'length'],
    ['(femur ^ 2) ^ 0.5', 'length'],
    ['AVERAGE(s.femur)', 'length'],
    ['IF(ankle > 30, femur, tibia)', 'length'],
    ['LET(x, femur, x + tibia)', 'length'],
    ['ROUND(MAX(femur, tibia), 1)', 'length'],
    ['SEG.RATIO(femur, tibia)', undefined],
    ['LEAN.SHANK(ankle)', 'angle'],
    ['ABS(-ankle)', 'angle'],
    ['note & "x"', undefined],
    ['C1', 'mass'],
    ['femur * tibia', undefined],
    ['TEST.MDC(STDEV(s.femur))', 'length'],
    ['TEST.CHANGE(femur, tibia, 0.4)', undefined],
    ['TRAIN.BEST(s.minutes, s.mass, 1, 9)', 'mass'],
    ['TRAIN.TREND(s.minutes, s.mass)', 'mass per week'],
    ['TRAIN.MEAN(s.minutes, s.mass, 9)', 'mass per day'],
    ['TEST.REACHED(s.minutes, s.mass, 100)', 'date'],
    ['TEST.REACHED(s.minutes, s.mass, 100, "date")', 'date'],
    ['TEST.REACHED(s.minutes, s.mass, MAX(s.mass), "slope")', 'mass per week'],
    ['TEST.REACHED(s.minutes, s.mass, 100, "High")', 'mass per week'],
    ['TEST.REACHED(s.minutes, s.mass, 100, note)', undefined],
  ])('%s: %s', (formula, dimension) => expect(dimensionOf(formula)).toBe(dimension));
});

describe('what the calculation doubts', () => {
  test.each([
    'femur + mass',
    'femur - AVERAGE(s.mass)',
    'IF(femur > ankle, 1, 2)',
    'MAX(femur, mass)',
    'SEG.RATIO(femur, mass)',
    'femur / tibia + mass',
    'SEG.RATIO(femur, tibia) + 1',
    'femur + 2 * tibia - 3',
    'mass * 2 > minutes',
    'TEST.CHANGE(femur, tibia, 0.4)',
    'TEST.CHANGE(femur, mass, 0.4)',
    'mass + TRAIN.TREND(s.minutes, s.mass)',
    'TRAIN.TREND(s.minutes, s.mass) > TRAIN.MEAN(s.minutes, s.mass, 9)',
  ])('%s', (formula) => expect(doubts(formula)).toMatchSnapshot());
  test('a column that is said to measure something else', () => {
    expect(doubts('femur * 2', { dimension: 'angle' })).toMatchSnapshot();
  });
  test('a doubt is no error: the value stands', () => {
    const b = new Bench(bookOf({ s: { ...columns, y: 'femur + mass' } }));
    expect(b.values('s', 'y')).toEqual([122, 130]);
  });
  test('circles once, and errors where they come from, not where they are passed on', () => {
    const b = new Bench(
      bookOf({
        s: {
          x: [1, 0, 0],
          a: '1/x',
          b: 'a+1',
          c: 'd',
          d: 'c',
          v: [f('SUM(s.b)'), f('A1+nothing'), null],
          w: [f('F2'), null, null],
        },
      }),
    );
    expect(
      b.calculation.doubts().map(({ place, about, sentence }) => [about, place, sentence]),
    ).toMatchSnapshot();
  });
  test('a formula that was stopped', () => {
    const b = new Bench(bookOf({ s: { x: [1], y: 'x+1' } }));
    b.calculation.stop({ sheet: 's', column: 'y' });
    expect(b.calculation.doubts()).toMatchObject([{ about: 'hung', place: { sheet: 's', column: 'y' } }]);
  });
});

describe('errors that come from a held value', () => {
  const held = { held: '4 kg', reason: 'a length is wanted' };
  const of = (y: string, z: string, femur: unknown[] = [42, held, 41]) =>
    new Bench(
      bookOf({
        s: {
          femur: { dimension: 'length' as const, cells: femur as number[] },
          tibia: { dimension: 'length' as const, cells: [40, 41, 0] },
          y: { formula: y },
          z: { formula: z },
        },
      }),
    ).calculation
      .doubts()
      .map(({ place, sentence }) => [place.column, place.row, /\(\d+ rows\)/.exec(sentence)?.[0]]);

  test('are not told one by one, however many formulas read it or one another', () => {
    expect(of('femur * 2', 'y + femur')).toEqual([]);
    expect(of('SEG.RATIO(femur, tibia + 1)', 'AVERAGE(s.y)')).toEqual([]);
  });

  test('errors of other rows are told with their own row and count', () => {
    // Only the third row divides by nothing: the second is the held value's.
    expect(of('femur / tibia', 'tibia', [42, held, 41])).toEqual([['y', 2, undefined]]);
    expect(of('1 / (femur - 42)', 'tibia', [42, held, 42])).toEqual([['y', 0, '(2 rows)']]);
  });
});

import { describe, expect, test } from 'vitest';
import { Bench, bookOf, f } from './book-for-test.ts';

const roster = () =>
  new Bench(
    bookOf(
      {
        roster: {
          femur: [42, 40, null, 38],
          tibia: [40, 41, 39, 40],
          ratio: 'SEG.RATIO(femur, tibia)',
          double: 'ratio*2',
        },
        summary: {
          label: ['mean', 'top', 'target'],
          value: [f('AVERAGE(roster.femur)'), f('MAX(roster.ratio)+target'), 5],
        },
      },
      { target: ['summary', 'value', 2] },
    ),
  );

describe('a calculated book', () => {
  test('computes columns, free cells and named cells in one order', () => {
    const b = roster();
    expect(b.column('roster', 'double')[0]).toBeCloseTo(2.1, 12);
    expect(b.values('roster', 'ratio')[2]).toBe('#N/A');
    expect(b.value('summary', 'value', 0)).toBeCloseTo(40, 12);
    expect(b.sentence('roster', 'double', 2)).toContain('"a" of SEG.RATIO is blank');
  });
  test('follows an edit through rows, aggregates and cells', () => {
    const b = roster();
    b.put('roster', 'femur', 2, 39);
    expect(b.value('roster', 'double', 2)).toBeCloseTo(2, 12);
    expect(b.value('summary', 'value', 1)).toBeCloseTo(6.05, 12);
    b.put('summary', 'value', 2, 10);
    expect(b.value('summary', 'value', 1)).toBeCloseTo(11.05, 12);
  });
});

import { describe, expect, test } from 'vitest';
import { Bench, bookOf, type Sketch } from './book-for-test.ts';

const checks = (sketch: Sketch, names = {}): readonly (readonly unknown[])[] =>
  new Bench(bookOf(sketch, names)).calculation
    .doubts()
    .map(({ about, place, sentence, results }) => [about, `${place.column} ${place.row}`, sentence, results]);

const lengths = { femur: [42, 43, 44], tibia: [41, 40, 39], trunk: [51, 52, 50] };
const results = {
  lean: 'LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, "high-bar", foot)',
  lean_error: 'LEAN.ERROR(1, 2, femur, tibia, trunk, ankle, 0, "high-bar", foot)',
  from_ankle: 'LEAN.PART("ankle", femur, tibia, trunk, ankle, 38)',
  deepest: 'LEAN.DEEPEST(femur, tibia, trunk, ankle)',
  limiter: 'LEAN.LIMITER(femur, tibia, trunk, ankle)',
  above: 'lean - 30',
};

describe('a measure that is missing', () => {
  test('is one entry, however many results wait for it', () => {
    const entries = checks({
      s: { ...lengths, ankle: [38, null, null], foot: [null, null, 27], ...results },
    });
    expect(entries).toEqual([
      ['pending', 'ankle 1', 'ankle is blank; 6 results are pending.', 6],
      ['pending', 'ankle 2', 'ankle is blank; 6 results are pending.', 6],
    ]);
  });

  test('is found behind columns that compute from it, and behind a blank text', () => {
    const wall = { wall: [11.7, null, 12], foot: [27, 27, 27] };
    const ankle = 'IF(COUNT(wall) = 0, "", ANKLE.FROM.WALL(wall, tibia, foot))';
    const [entry, ...others] = checks({ s: { ...lengths, ...wall, ankle, ...results } });
    expect(entry).toEqual(['pending', 'wall 1', 'wall is blank; 6 results are pending.', 6]);
    expect(others).toEqual([]);
  });

  test('is named for each that a result waits for', () => {
    const entries = checks({
      s: { femur: [null], tibia: [41], trunk: [null], ankle: [38], lean: results.lean.replace('foot', '27') },
    });
    expect(entries.map(([, place]) => place)).toEqual(['femur 0', 'trunk 0']);
  });

  test('may be a setting', () => {
    const entries = checks(
      { s: { ...lengths, lift: 'LIFT.FOR.LEAN(goal, femur, tibia, trunk, 38)' }, t: { v: [null] } },
      { goal: ['t', 'v', 0] },
    );
    expect(entries).toEqual([['pending', 'v 0', 'v is blank; 3 results are pending.', 3]]);
  });

  test('is told a column at a time where a column is hardly measured', () => {
    const of = (n: number) => new Array<number>(50).fill(n);
    const sketch = {
      s: {
        femur: of(42),
        tibia: of(41),
        trunk: of(51),
        ankle: new Array<null>(50).fill(null),
        y: results.deepest,
      },
    };
    expect(checks(sketch)).toEqual([
      ['pending', 'ankle undefined', 'ankle is blank in 50 rows; 50 results are pending.', 50],
    ]);
  });

  test('that a formula looks up on another sheet is told once', () => {
    const looked = 'ANKLE.FROM.WALL(11, INDEX(s.tibia, 1))';
    expect(checks({ s: { tibia: [null] }, t: { wall: [1, 2], y: looked } })).toEqual([
      ['pending', 'y 0', expect.stringMatching(/tibia.* is blank.* \(2 rows\)$/), 2],
    ]);
  });
});

describe('an error', () => {
  test('stays one where the formula itself leaves an argument out', () => {
    expect(checks({ s: { femur: [42], y: 'LEAN.PARALLEL(femur, 41, , 38)' } })[0]![0]).toBe('error');
  });

  test('that many functions have of one value is one entry with its count', () => {
    const { lean, lean_error, deepest } = results;
    const entries = checks({
      s: { femur: [420], tibia: [41], trunk: [51], ankle: [38], foot: [27], lean, lean_error, deepest },
    });
    expect(entries).toHaveLength(1);
    expect(entries[0]).toEqual(['error', 'lean 0', expect.stringContaining('420'), 3]);
  });

  test('of two values is two entries', () => {
    expect(
      checks({
        s: { femur: [420, 430], tibia: [41, 41], trunk: [51, 51], ankle: [38, 38], y: results.deepest },
      }),
    ).toHaveLength(2);
  });
});

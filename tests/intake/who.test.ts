import { describe, expect, test } from 'vitest';
import { whoIsWho } from '../../src/intake/people/who.ts';
import { addSheet, bring, column, newBook, wordsOf } from './help.ts';

const people = ['Anna Müller', 'Zoë Kral', 'Jo Lind', 'Bjørn Åsen', 'Maria Costa', 'Mario Costa'].map(
  (value, i) => ({
    value,
    also: [`L-0${i + 1}`],
  }),
);
const ask = (text: string, same: Record<string, string> = {}) => whoIsWho(new Map([[text, 1]]), people, same);

describe('whoIsWho', () => {
  test.each([
    ['anna müller', 'Anna Müller', 'spelling'],
    ['  Anna   Müller ', 'Anna Müller', 'spelling'],
    ['Anna Muller', 'Anna Müller', 'accents'],
    ['Anna Mueller', 'Anna Müller', 'accents'],
    ['Müller, Anna', 'Anna Müller', 'order'],
    ['KRAL Zoe', 'Zoë Kral', 'order'],
    ['Bjorn Asen', 'Bjørn Åsen', 'accents'],
    ['l-03', 'Jo Lind', 'spelling'],
  ])('"%s" is %s (%s)', (text, value, by) => {
    expect(ask(text).same).toEqual([{ text, value, by, rows: 1 }]);
    expect(ask(text).rename.get(text)).toBe(value);
  });

  test.each([
    ['Ana Müller', ['Anna Müller']],
    ['A. Müller', ['Anna Müller']],
    ['Zoë Krall', ['Zoë Kral']],
    ['Marie Costa', ['Maria Costa', 'Mario Costa']],
  ])('"%s" is only proposed as %s, never merged', (text, values) => {
    const found = ask(text);
    expect(found.rename.size).toBe(0);
    expect(found.close).toEqual([{ text, values, rows: 1 }]);
  });

  test('somebody else is nobody of the roster', () => {
    expect(ask('Peter Novak')).toMatchObject({
      same: [],
      close: [],
      unknown: [{ text: 'Peter Novak', rows: 1 }],
    });
    expect(ask('L-09').unknown).toHaveLength(1);
  });

  test('an earlier decision holds', () => {
    expect(ask('Annie M', { 'annie m': 'Anna Müller' }).rename.get('Annie M')).toBe('Anna Müller');
  });

  test('a name that two people share means neither of them', () => {
    const twins = [
      { value: 'Kim Park (A)', also: ['Kim Park'] },
      { value: 'Kim Park (B)', also: ['Kim Park'] },
    ];
    const found = whoIsWho(new Map([['kim park', 3]]), twins);
    expect(found.rename.size).toBe(0);
    expect(found.close[0]!.values).toHaveLength(2);
  });
});

describe('a log that comes in beside a roster', () => {
  function book() {
    const b = newBook();
    addSheet(b, 'roster', [
      [{ name: 'id', kind: 'text' }, ['L-01', 'L-02', 'L-03']],
      [{ name: 'athlete', kind: 'text' }, ['Anna Müller', 'Zoë Kral', 'Jo Lind']],
    ]);
    addSheet(b, 'log', [[{ name: 'athlete', kind: 'text' }], [{ name: 'load', kind: 'number' }]]);
    return b;
  }
  const log =
    'Athlete,Load\n"Müller, Anna",80\nzoe kral,60\nL-03,100\nZoë Krall,62\nPeter Novak,90\nAnna Müller,82\n';

  test("gets the roster's spelling where it is clear who is meant, and says who is not", () => {
    const b = book();
    const imported = bring(b, 'log', log);
    expect(column(b, 'log', 'athlete')).toEqual([
      'Anna Müller',
      'Zoë Kral',
      'Jo Lind',
      'Zoë Krall',
      'Peter Novak',
      'Anna Müller',
    ]);
    expect(imported.who).toMatchObject({
      column: 'athlete',
      roster: 'roster',
      close: [{ text: 'Zoë Krall', values: ['Zoë Kral'] }],
      unknown: [{ text: 'Peter Novak' }],
    });
    expect(wordsOf(imported).filter((w) => w.includes('Zoë Krall'))[0]).toMatch(
      /may be "Zoë Kral" of roster\. Say so/,
    );
    expect(imported.recipe.who).toEqual({
      column: 'athlete',
      roster: 'roster',
      name: 'athlete',
      also: ['id'],
    });
  });

  test('a decision that stands in the recipe is followed', () => {
    const b = book();
    const { recipe } = bring(b, 'log', log);
    const decided = { ...recipe, who: { ...recipe.who!, same: { 'Zoë Krall': 'Zoë Kral' } } };
    bring(b, 'log', 'Athlete,Load\nZoë Krall,64\n', { recipe: decided });
    expect(column(b, 'log', 'athlete').at(-1)).toBe('Zoë Kral');
  });

  test('asked to leave names alone, it does', () => {
    const b = book();
    const imported = bring(b, 'log', log, { who: null });
    expect(imported.who).toBeNull();
    expect(column(b, 'log', 'athlete')[0]).toBe('Müller, Anna');
  });
});

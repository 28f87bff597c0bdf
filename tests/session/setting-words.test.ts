import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

const sample = (name: string): string =>
  readFileSync(new URL(`../../sample-books/${name}.leverbook.json`, import.meta.url), 'utf8');

test('a setting is called and measured as its row in a sheet of settings says', () => {
  const named = new Map(
    Session.open(sample('squat-screening'))
      .outline()
      .names.map((one) => [one.name, one]),
  );
  expect(named.get('target_lean')).toMatchObject({ label: 'Target lean', unit: '°' });
  expect(named.get('max_lift')).toMatchObject({ label: 'Highest heel lift', unit: 'cm' });
  expect(named.get('placement')).toMatchObject({ label: 'Placement' });
  expect(named.get('placement')).not.toHaveProperty('unit');
});

test('a name in a sheet about people does not take a person’s name for its label', () => {
  const session = Session.create();
  session.execute({
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      { name: 'femur', dimension: 'length', unit: 'cm' },
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', 'femur'],
    texts: [
      ['Ada', '42'],
      ['Bo', '44'],
      ['Cy', '43'],
    ],
  });
  session.execute({ do: 'name-cell', sheet: 'roster', column: 'femur', row: 1, name: 'longest_femur' });
  expect(session.outline().names).toMatchObject([{ label: 'Longest femur', unit: 'cm' }]);
});

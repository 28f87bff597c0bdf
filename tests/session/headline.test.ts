import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { FigureNumbers, PostureFigure } from '../../src/session/api.ts';
import { headlineOf } from '../../src/session/figure/headline.ts';
import { Session } from '../../src/session/session.ts';

/** A posture and its error as far as the sentence looks at them. */
const stand = (lean: number, depth = 0) => ({ lean, depth }) as PostureFigure;
const within = (error: number) => ({ leanError: { value: error } }) as FigureNumbers;
const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ');

describe('the sentence above the figure', () => {
  const flat = stand(40.4);
  const base = { flat, lifted: null, lift: '3 cm', numbers: { flat: within(2.6), lifted: null } };

  test('says the minimum lean on the flat with its error', () => {
    expect(plain(headlineOf(base))).toBe('At least 40° ± 3° of lean at parallel on the flat.');
  });

  test('says what a heel lift brings it to', () => {
    const lifted = { lifted: stand(31.2), numbers: { flat: within(2.6), lifted: within(2.5) } };
    expect(plain(headlineOf({ ...base, ...lifted }))).toBe(
      'At least 40° ± 3° of lean at parallel on the flat; a 3 cm heel lift brings it to 31° ± 3°.',
    );
  });

  test('tells no difference that is within the error', () => {
    const lifted = {
      lifted: stand(38.2),
      lift: '0.5 cm',
      numbers: { flat: within(2.6), lifted: within(2.5) },
    };
    expect(plain(headlineOf({ ...base, ...lifted }))).toBe(
      'At least 40° ± 3° of lean at parallel on the flat; a 0.5 cm heel lift changes it by no more than the error.',
    );
  });

  test('names the depth that is looked at', () => {
    expect(headlineOf({ ...base, flat: stand(40, -10) })).toContain('at 10° below parallel');
    expect(headlineOf({ ...base, flat: stand(40, 15.2) })).toContain('at 15° above parallel');
  });

  test('is left to the reason where there is no posture on the flat', () => {
    expect(headlineOf({ ...base, flat: { sentence: 'The trunk does not reach.' } as never })).toBeNull();
  });
});

test('the screening opens on a lifter whose lean a heel lift changes by more than twice the error, and on the column to explain it', () => {
  const session = Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
  for (const _ of session.recalculate());
  const roster = session.outline().sheets[0]!;
  const figure = session.figure(roster.id, 0);
  const { flat, lifted, leanError } = figure;
  if (!('lean' in flat) || !lifted || !('lean' in lifted)) throw new Error('no posture');
  expect(flat.lean - lifted.lean).toBeGreaterThan(2 * leanError!);
  expect(roster.columns.find(({ id }) => id === figure.leanColumn)?.name).toBe('lean');
  // Beside the name stand the answers, before what they were computed from.
  expect(roster.columns.slice(0, 6).map(({ name }) => name)).toEqual([
    'athlete',
    'lean',
    'lean_error',
    'from_build',
    'from_ankle',
    'lift_needed',
  ]);
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { PostureFigure } from '../../src/session/api.ts';
import { Session } from '../../src/session/session.ts';
import { type Build, leanOf } from './posture.ts';

function lifter(texts: readonly string[], more: Partial<Record<string, string>> = {}): Session {
  const session = Session.create();
  const names = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'lift'];
  session.execute({
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      ...names.map((name) => ({ name })),
      { name: 'placement', kind: 'text' },
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', ...names, 'placement'],
    texts: [['Ada', ...texts, more.placement ?? '']],
  });
  return session;
}
const build: Build = { femur: 43, tibia: 40, trunk: 51, ankle: 32, foot: 26 };
const ada = () => lifter(['43', '40', '51', '32', '26', '2.5']);
const posture = (figure: unknown): PostureFigure => {
  if (!figure || typeof figure !== 'object' || 'sentence' in figure) throw new Error(JSON.stringify(figure));
  return figure as PostureFigure;
};
const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);

describe('the figure of a row', () => {
  test('stands as the closed form says: lean, lengths to scale, the bar over mid-foot', () => {
    const { flat, lifted, title, missing } = ada().figure('roster', 0);
    expect(title).toBe('Ada');
    expect(missing).toEqual([]);
    for (const [figure, lift] of [
      [posture(flat), 0],
      [posture(lifted), 2.5],
    ] as const) {
      expect(figure.lean).toBeCloseTo(leanOf(build, lift)!, 9);
      expect(distance(figure.hip, figure.knee)).toBeCloseTo(build.femur, 9);
      expect(distance(figure.knee, figure.ankle)).toBeCloseTo(build.tibia, 9);
      expect(distance(figure.hip, figure.shoulder)).toBeCloseTo(build.trunk, 9);
      expect(figure.bar[0]).toBeCloseTo(0, 9);
      // At parallel the thigh is level.
      expect(figure.hip[1]).toBeCloseTo(figure.knee[1], 9);
      expect(figure.heel[1]).toBe(lift);
    }
  });

  test('tries out lift, depth and ankle without touching the data', () => {
    const session = ada();
    const before = session.save();
    const tried = session.figure('roster', 0, { lift: 1, depth: 20, ankle: 38 });
    expect(posture(tried.flat).lean).toBeCloseTo(leanOf({ ...build, ankle: 38 }, 0, 20)!, 9);
    expect(posture(tried.lifted).lean).toBeCloseTo(leanOf({ ...build, ankle: 38 }, 1, 20)!, 9);
    expect(session.save()).toBe(before);
  });

  test('says what is missing, and what no posture holds', () => {
    const blank = lifter(['43', '', '51', 'stiff', '', '']).figure('roster', 0);
    expect(blank).toMatchObject({ missing: ['tibia', 'ankle'], lifted: null, leanError: null });
    expect(blank.flat).toHaveProperty('sentence', expect.stringContaining('tibia, ankle'));
    const outside = lifter(['430', '40', '51', '32', '26', '']).figure('roster', 0);
    expect(outside.flat).toHaveProperty('sentence', expect.stringMatching(/femur.*430/));
    const never = lifter(['75', '20', '25', '0', '12', '']).figure('roster', 0);
    expect(never.flat).toHaveProperty('sentence', expect.stringMatching(/\.$/));
  });

  test('takes other columns that the book’s setting names, and set-up from named cells', () => {
    const session = ada();
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { name: 'long_bone' } });
    expect(posture(session.figure('roster', 0).flat).lean).toBeCloseTo(leanOf(build)!, 9);
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { role: null } });
    expect(session.figure('roster', 0).missing).toEqual(['femur']);
    session.execute({
      do: 'set-part',
      part: 'settings',
      key: 'figure',
      value: { columns: { femur: 'long_bone' } },
    });
    expect(posture(session.figure('roster', 0).flat).lean).toBeCloseTo(leanOf(build)!, 9);
    session.execute({ do: 'add-sheet', name: 'set_up', rows: 1, columns: [{ name: 'word', kind: 'text' }] });
    session.execute({ do: 'set-cells', sheet: 'set_up', row: 0, columns: ['word'], texts: [['front']] });
    session.execute({ do: 'name-cell', sheet: 'set_up', column: 'word', row: 0, name: 'bar_place' });
    session.execute({
      do: 'set-part',
      part: 'settings',
      key: 'figure',
      value: { columns: { femur: 'long_bone', placement: 'bar_place' } },
    });
    expect(posture(session.figure('roster', 0).flat).lean).toBeLessThan(leanOf(build)!);
  });

  test('agrees with the lean columns of the screening book in every row', () => {
    const session = Session.open(
      readFileSync(new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
    );
    for (const { row, values } of session.records('roster')) {
      const figure = session.figure('roster', row);
      expect(posture(figure.flat).lean).toBeCloseTo(values.lean as number, 9);
      expect(figure.leanError).toBeCloseTo(values.lean_error as number, 9);
      if (typeof values.lift === 'number' && values.lift !== 0)
        expect(posture(figure.lifted).lean).toBeCloseTo(values.lean_lifted as number, 9);
    }
  });
});

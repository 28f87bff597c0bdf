import { describe, expect, test } from 'vitest';
import { devicesSheet } from '../../src/session/devices.ts';
import { Session } from '../../src/session/session.ts';
import { ankleFromWall, type Build, leanOf } from './posture.ts';

const measures = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'mass', 'bar', 'lift'];

function lifter(texts: readonly string[], target?: string): Session {
  const session = Session.create();
  const run = (command: Parameters<Session['execute']>[0]) => {
    const done = session.execute(command);
    if (!done.ok) throw new Error(done.sentence);
  };
  run({
    do: 'add-sheet',
    name: 'roster',
    columns: [{ name: 'athlete', kind: 'text' }, ...measures.map((name) => ({ name })), { name: 'goal' }],
  });
  run({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', ...measures, 'goal'],
    texts: [['Ada', ...measures.map((_, at) => texts[at] ?? ''), target ?? '']],
  });
  if (target) run({ do: 'name-cell', sheet: 'roster', column: 'goal', row: 0, name: 'target_lean' });
  return session;
}
const build: Build = { femur: 44, tibia: 39, trunk: 50, ankle: 30, foot: 26 };
const texts = ['44', '39', '50', '30', '26'];

describe('heel lift or more ankle range', () => {
  test('has the closed form’s lean for every step of range, and the heel lift that reaches the target', () => {
    const { rows } = lifter(texts, '40').heelOrAnkle('roster', 0)!;
    expect(rows.map(({ gain }) => gain)).toEqual([0, 2.5, 5, 7.5, 10]);
    for (const { gain, lean, needed } of rows) {
      const now = { ...build, ankle: 30 + gain };
      expect(lean.value).toBeCloseTo(leanOf(now)!, 9);
      if (leanOf(now)! <= 40) expect(needed.value).toBe(0);
      else expect(leanOf(now, needed.value as number)).toBeCloseTo(40, 4);
    }
    expect(rows.some(({ needed }) => needed.value === 0)).toBe(true);
    expect(rows[0]!.share.sentence).toBe('Needs body mass and bar load.');
  });

  test('puts the heel lift in use first, with what it makes of the lean', () => {
    const { rows } = lifter([...texts, '', '', '2'], '34').heelOrAnkle('roster', 0)!;
    expect(rows[0]).toMatchObject({ gain: 0, lift: 2 });
    expect(rows[0]!.lean.value).toBeCloseTo(leanOf(build, 2)!, 9);
    expect(rows).toHaveLength(6);
  });

  test('has no target of its own: without one, and without an observed squat, the column says so', () => {
    const answer = lifter(texts).heelOrAnkle('roster', 0)!;
    expect(answer.target).toBeNull();
    expect(answer.rows[0]!.needed).toEqual({
      value: null,
      sentence: 'Set a target lean, or digitise a squat of this lifter.',
    });
    expect(lifter(['44', '', '50', '30']).heelOrAnkle('roster', 0)).toBeNull();
  });

  test('shows where the weight acts and the hips’ share, as statics has them', () => {
    // Statics worked out apart from the program: (44.5, 41, 50, 28, foot 27.5), 85 kg with 20 kg, bar over mid-foot.
    const stiff = lifter(['44.5', '41', '50', '28', '27.5', '85', '20']).heelOrAnkle('roster', 0)!;
    expect(stiff.rows[0]!.lean.value).toBeCloseTo(44.93, 2);
    expect(stiff.rows[0]!.centre.value).toBeCloseTo(23.5, 1);
    // The survey's mean man with 85 kg on 85 kg (ANSUR II, Gordon et al. 2014, NATICK/TR-15/007).
    const mean = lifter(['40.93', '41.88', '53.98', '38', '27.12', '85', '85']).heelOrAnkle('roster', 0)!;
    expect(mean.rows[0]!.centre.value).toBeCloseTo(42.9, 1);
    expect(mean.rows[0]!.share.value).toBeCloseTo(0.45, 2);
  });

  test('turns the minimal detectable change of the wall test into this lifter’s degrees', () => {
    // 1.9 cm: Powden et al. 2015, Man Ther 20:524–532
    const { detectable, stretching } = lifter(texts).heelOrAnkle('roster', 0)!;
    const wall = 39 * Math.sin(Math.PI / 6) - 0.75 * 26 + 5;
    expect(detectable!.wall).toBe(1.9);
    expect(detectable!.ankle).toBeCloseTo(ankleFromWall(wall + 1.9, 39, 26) - 30, 9);
    // Medeiros & Martini 2018, The Foot, static stretching: 5.17° (4.39–5.95)
    expect(stretching).toMatchObject({ mean: 5.2, low: 4.4, high: 6 });
    expect(stretching.source.status).toBe('secondary transcription');
  });
});

test('A gym’s devices each come to one heel lift: plate, wedge, shoe, shoe on a wedge', () => {
  const session = Session.create();
  const done = session.execute(devicesSheet([]));
  if (!done.ok) throw new Error(done.sentence);
  const put = session.execute({
    do: 'set-cells',
    sheet: 'devices',
    row: 0,
    columns: ['device', 'device_kind', 'heel_stack', 'ball_stack', 'rise', 'wedge_length', 'foot'],
    texts: [
      ['Thin plate', 'plate', '1', '', '', '', '27'],
      ['Wedge', 'wedge', '', '', '5', '30', '27'],
      ['Shoe', 'shoe', '3.5', '1.6', '', '', '27'],
      ['Shoe on the wedge', 'shoe on a wedge', '3.5', '1.6', '5', '30', '27'],
    ],
  });
  if (!put.ok) throw new Error(put.sentence);
  const height = (row: number) => session.evaluate(`INDEX(devices.height, ${row})`);
  // Plane geometry: heel to ball .74 of the foot (ANSUR II), pitches add up.
  const b = 0.74 * 27;
  expect(height(1)).toBeCloseTo(1, 9);
  expect(height(2)).toBeCloseTo((b * 5) / 30, 9);
  expect(height(3)).toBeCloseTo(1.9, 9);
  expect(height(4)).toBeCloseTo(b * Math.sin(Math.asin(1.9 / b) + Math.asin(5 / 30)), 9);
  expect(height(5)).toBe('');
});

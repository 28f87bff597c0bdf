import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

const measures = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'mass', 'bar'];
const seen = ['observed_lean', 'shin', 'depth'];

/** One lifter with body mass and bar in the row of an observed squat. */
function squat(texts: readonly string[]): ReturnType<Session['figure']> {
  const session = Session.create();
  const done = session.execute({
    do: 'add-sheet',
    name: 'squats',
    columns: [{ name: 'athlete', kind: 'text' }, ...[...measures, ...seen].map((name) => ({ name }))],
  });
  if (!done.ok) throw new Error(done.sentence);
  session.execute({
    do: 'set-cells',
    sheet: 'squats',
    row: 0,
    columns: ['athlete', ...measures, ...seen],
    texts: [['Ada', ...texts]],
  });
  return session.figure('squats', 0);
}
const of = (figure: ReturnType<Session['figure']>, which: string) =>
  figure.loads.find((one) => one.of === which)?.loads;

describe('loads side by side', () => {
  test('put the whole weight over mid-foot by the system rule, and away from it by the bar rule', () => {
    // Statics worked out apart from the program: femur 44.5, tibia 41, trunk 50, ankle 28, foot 27.5, 85 kg with 20 kg.
    const figure = squat(['44.5', '41', '50', '28', '27.5', '85', '20', '', '', '0']);
    expect(of(figure, 'minimum')!.lean).toBeCloseTo(44.93, 2);
    expect(of(figure, 'minimum')!.centre.value).toBeCloseTo(23.5, 1);
    expect(of(figure, 'system')!.centre.value).toBeCloseTo(50, 6);
    expect(of(figure, 'system')!.lean).toBeGreaterThan(of(figure, 'minimum')!.lean);
    expect(of(figure, 'observed')).toBeUndefined();
  });

  test('at an observed lean of 39.3° the hips of the mean man bear .61, where a study found .62', () => {
    // Survey's mean man (ANSUR II, Gordon et al. 2014), 85 kg on 85 kg; lean of Sato et al. 2013; Wretenberg et al. 1996,
    // Med Sci Sports Exerc 28:218: hip share .62 at parallel with a high bar.
    const figure = squat(['40.93', '41.88', '53.98', '38', '27.12', '85', '85', '39.3', '28', '0']);
    const observed = of(figure, 'observed')!;
    expect(observed.lean).toBe(39.3);
    expect(observed.share.value).toBeCloseTo(0.61, 2);
    expect(of(figure, 'minimum')!.share.value).toBeCloseTo(0.45, 2);
    // Both sides, static: what the hips bear is g (m U + B x), U = .678·.626 T sin β, x = T sin β − .09 T cos β.
    const [sin, cos] = [Math.sin((39.3 * Math.PI) / 180), Math.cos((39.3 * Math.PI) / 180)];
    const hip = 9.80665 * 0.5398 * (85 * 0.678 * 0.626 * sin + 85 * (sin - 0.09 * cos));
    expect(observed.hip.value).toBeCloseTo(hip, 1);
    expect(observed.ankle.value).toBeTypeOf('number');
  });

  test('are not there without body mass or bar', () => {
    expect(squat(['44.5', '41', '50', '28', '27.5', '85', '', '40', '25', '0']).loads).toEqual([]);
  });
});

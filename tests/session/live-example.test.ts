import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { registry } from '../../functions/registry.ts';
import { Session } from '../../src/session/session.ts';
import { leanOf } from './posture.ts';

const session = Session.open(
  readFileSync(new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
);
const row = 4;
const values = [...session.records('roster')][row]!.values as Record<string, number | string>;
const place = { sheet: 'roster', column: 'lean', row };

test('a function is shown with the row that is chosen', () => {
  const [femur, tibia, trunk, ankle] = ['femur', 'tibia', 'trunk', 'ankle'].map(
    (name) => values[name] as number,
  );
  const build = { femur: femur!, tibia: tibia!, trunk: trunk!, ankle: ankle! };
  const lean = leanOf(build)!;
  // First-order propagation of independent errors (JCGM 100:2008, 5.1.2): 1 cm on each length, 2° on the ankle, the foot held.
  const foot = (0.152 / 0.779) * (build.femur + build.tibia + build.trunk);
  const slope = (name: keyof typeof build) =>
    leanOf({ ...build, foot, [name]: build[name] + 0.5 })! -
    leanOf({ ...build, foot, [name]: build[name] - 0.5 })!;
  const error = Math.hypot(slope('femur'), slope('tibia'), slope('trunk'), 2 * slope('ankle'));
  expect(session.example('LEAN.PARALLEL', place)).toEqual({
    formula: 'LEAN.PARALLEL(femur, tibia, trunk, ankle)',
    result: `${Math.round(lean)}° ± ${Math.round(error)}°`,
    error: false,
    title: values.athlete,
    standIns: [],
  });
  expect(session.example('SEG.CHECK', place)).toMatchObject({ result: 'ok' });
});

test('what the row has not is stood in for and named; nothing is shown where the row has nothing', () => {
  expect(session.example('ANKLE.FROM.WALL', place)).toMatchObject({
    formula: expect.stringMatching(/^ANKLE\.FROM\.WALL\([\d.]+, tibia\)$/),
    standIns: [registry.get('ANKLE.FROM.WALL')!.parameters[0]!.name],
  });
  expect(session.example('MOMENT.SHARE', place)).toBeNull();
  expect(session.example('NO.SUCH', place)).toBeNull();
});

test('every function answers for the row or says that it cannot, and the book stays as it is', () => {
  const before = session.save();
  for (const name of registry.keys()) {
    const example = session.example(name, place);
    if (example) expect(example.result).not.toBe('');
  }
  expect(session.save()).toBe(before);
});

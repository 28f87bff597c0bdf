import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Figure, PostureFigure } from '../../src/session/api.ts';
import { Session } from '../../src/session/session.ts';
import { type Build, leanOf } from './posture.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const text = readFileSync(
  new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url),
  'utf8',
);
let session: Session;
let rows: Readonly<Record<string, number>>[];
beforeAll(() => {
  session = Session.open(text);
  rows = [...session.records('roster')].map((r) => r.values as Record<string, number>);
});
const posture = (stand: Figure['lifted']): PostureFigure => {
  if (!stand || !('lean' in stand)) throw new Error(JSON.stringify(stand));
  return stand;
};
const buildOf = (row: Readonly<Record<string, number>>): Build => ({
  femur: row.femur!,
  tibia: row.tibia!,
  trunk: row.trunk!,
  ankle: row.ankle!,
  foot: row.foot!,
});

/** A sheet of one lifter, without a lift column. */
function alone(texts: string[]): Session {
  const own = Session.create();
  const names = ['femur', 'tibia', 'trunk', 'ankle', 'foot'];
  own.execute({ do: 'add-sheet', name: 'tall', rows: 1, columns: names.map((name) => ({ name })) });
  own.execute({ do: 'set-cells', sheet: 'tall', row: 0, columns: names, texts: [texts] });
  return own;
}

describe('the figures beside the drawing', () => {
  test('moments follow the statics of the segments, both sides', () => {
    const figure = session.figure('roster', 3, { bar: 100, mass: 80, lift: 1 });
    // Dempster 1955, in Winter, Biomechanics and Motor Control of Human Movement, Table 4.1: head, arms and trunk .678 of
    // body mass, centre .626 of the trunk from the hip; each thigh .100, centre .433 from the hip. g 9.80665 (ISO 80000-3).
    const { femur, trunk } = rows[3]!;
    for (const [stand, numbers] of [
      [posture(figure.flat), figure.numbers.flat],
      [posture(figure.lifted), figure.numbers.lifted!],
    ] as const) {
      const beta = rad(stand.lean);
      const upper = 0.678 * 0.626 * trunk! * Math.sin(beta);
      const bar = trunk! * (Math.sin(beta) - 0.09 * Math.cos(beta));
      const hip = 9.80665 * 0.01 * (80 * upper + 100 * bar);
      const knee =
        9.80665 *
        0.01 *
        (0.2 * 80 * (1 - 0.433) * femur! + 80 * (0.678 * femur! - upper) + 100 * (femur! - bar));
      expect(numbers.hipMoment.value).toBeCloseTo(hip, 6);
      expect(numbers.kneeMoment.value).toBeCloseTo(knee, 6);
      expect(numbers.hipShare.value).toBeCloseTo(hip / (hip + knee), 9);
      expect(stand.hipMoment).toBe(numbers.hipMoment.value);
    }
  });

  test('say what moments need where it is not known', () => {
    const { numbers, controls } = session.figure('roster', 0);
    expect(numbers.flat.hipMoment).toEqual({ value: null, sentence: expect.stringContaining('bar load') });
    expect(controls.find(({ measure }) => measure === 'bar')).toMatchObject({
      value: null,
      from: 'default',
    });
    expect(controls.find(({ measure }) => measure === 'mass')).toMatchObject({ from: 'row' });
    expect(controls.find(({ measure }) => measure === 'placement')).toMatchObject({
      value: 'high-bar',
      from: 'setting',
    });
  });

  test('knee travel and the total centre of mass follow from the joints', () => {
    const { tibia, foot, trunk } = rows[5]!;
    const figure = session.figure('roster', 5, { bar: 60, mass: 70, lift: 0 });
    const stand = posture(figure.flat);
    // Toe tip .50 foot ahead of mid-foot on the flat; the knee from the closed form of the leg.
    const knee = -0.25 * foot! + tibia! * Math.sin(rad(rows[5]!.ankle!));
    expect(figure.numbers.flat.kneeAhead.value).toBeCloseTo(knee - 0.5 * foot!, 6);
    // Sum over the segments (Dempster: foot .0145, shank .0465 with its centre .433 from the knee).
    const at = (a: number, b: number, share: number) => a + share * (b - a);
    const beta = rad(stand.lean);
    const sum =
      70 *
        (2 * 0.0465 * at(stand.knee[0], stand.ankle[0], 0.433) +
          2 * 0.1 * at(stand.hip[0], stand.knee[0], 0.433) +
          0.678 * (stand.hip[0] + 0.626 * trunk! * Math.sin(beta))) +
      60 * stand.bar[0];
    expect(stand.centre![0]).toBeCloseTo(sum / 130, 6);
    expect(stand.centre![1]).toBeGreaterThan(stand.hip[1]);
  });

  test('deepest position and limiter are those of the book’s own columns', () => {
    for (const [row, values] of rows.entries()) {
      const { flat } = session.figure('roster', row).numbers;
      expect(flat.deepest.value).toBeCloseTo(values.deepest!, 9);
      expect(flat.limiter.value).toBe(values.limiter);
    }
  });

  test('the parts add up from the reference lifter to this one', () => {
    for (const [row, values] of rows.entries()) {
      const { parts } = session.figure('roster', row, { lift: 0 });
      const sum = values.femur! + values.tibia! + values.trunk!;
      // ANSUR II shares of the sum, mean of the sexes (Gordon et al. 2014); reference ankle 38° (working assumption).
      const reference = { femur: 0.2987 * sum, tibia: 0.3114 * sum, trunk: 0.3899 * sum, ankle: 38 };
      expect(parts!.reference).toBeCloseTo(leanOf({ ...reference, foot: values.foot! })!, 9);
      const total = parts!.items.reduce((all, { value }) => all + value, 0);
      expect(total).toBeCloseTo(leanOf(buildOf(values))! - parts!.reference, 9);
    }
  });
});

describe('the descent', () => {
  test('goes from 60° above parallel to the deepest position, the bar over mid-foot all the way', () => {
    for (const row of [0, 4, 9]) {
      const frames = session.descent('roster', row, { lift: 0 });
      expect(frames[0]!.depth).toBe(60);
      expect(frames.at(-1)!.depth).toBeCloseTo(rows[row]!.deepest!, 1);
      for (const [i, frame] of frames.entries()) {
        expect(Math.abs(frame.bar[0])).toBeLessThan(1e-9);
        expect(frame.kneeFlexion).toBeLessThanOrEqual(155 + 1e-9);
        // The shin moves in step with the thigh: at parallel and below, three quarters of the range (the book's setting)
        // times the share of the way down; the knee's limit of 155° may end it sooner.
        const step = (0.75 * rows[row]!.ankle! * (90 - frame.depth)) / (90 - rows[row]!.deepest!);
        expect(frame.shank - frame.pitch).toBeCloseTo(Math.min(step, 65 + frame.depth), 1);
        if (i > 0) expect(frame.depth).toBeLessThan(frames[i - 1]!.depth);
      }
    }
  });
});

describe('what no posture holds', () => {
  test('is shown at the most lean, with how far the bar stays behind mid-foot', () => {
    const { flat } = alone(['60', '30', '40', '5', '22']).figure('tall', 0);
    if ('lean' in flat) throw new Error('a posture where none can be');
    // Plane geometry: with the trunk level the bar is the trunk's length ahead of the hip, and .09 of it below the line.
    const hip = -0.25 * 22 + 30 * Math.sin(rad(5)) - 60;
    const reach = 40 * Math.hypot(1, 0.09);
    const least = hip + reach;
    expect(leanOf({ femur: 60, tibia: 30, trunk: 40, ankle: 5, foot: 22 })).toBeUndefined();
    // At 90°, the most that is drawn, A sinβ + C cosβ is the trunk's length.
    expect(flat.nearest!.offset).toBeCloseTo(hip + 40, 9);
    expect(flat.nearest!.offset).toBeLessThanOrEqual(least);
    expect(flat.nearest!.posture.bar[0]).toBeCloseTo(flat.nearest!.offset, 9);
    expect(flat.sentence).toMatch(/\.$/);
  });
});

describe('keeping a lift and a second lifter', () => {
  test('a lift that was tried out can be written into the row as it stands in its column', () => {
    const own = Session.open(text);
    const { keep } = own.figure('roster', 2, { lift: 1.7 });
    if ('sentence' in keep) throw new Error(keep.sentence);
    expect(keep).toMatchObject({ column: 'lift', text: '1.7', changes: true, overFormula: true });
    own.execute({ do: 'set-cells', sheet: 'roster', row: 2, columns: [keep.column], texts: [[keep.text]] });
    expect(posture(own.figure('roster', 2).lifted).lift).toBe(1.7);
    expect(own.figure('roster', 2).keep).toMatchObject({ changes: false });
    own.undo();
    expect(own.save()).toBe(Session.open(text).save());
  });

  test('without a lift column it is said where the lift would go', () => {
    const { keep } = alone(['42', '40', '50', '35', '26']).figure('tall', 0, { lift: 2 });
    expect(keep).toEqual({ sentence: expect.stringMatching(/no column "lift"/) });
  });

  test('another lifter stands in this one’s set-up, scaled to one stature', () => {
    const { beside, lifters } = session.figure('roster', 0, { beside: 7, lift: 2 });
    const scale = rows[0]!.stature! / rows[7]!.stature!;
    expect(beside).toMatchObject({ row: 7, by: 'stature' });
    expect(beside!.scale).toBeCloseTo(scale, 12);
    const { ankle, ...lengths } = buildOf(rows[7]!);
    const scaled = Object.fromEntries(Object.entries(lengths).map(([name, cm]) => [name, cm * scale]));
    expect(posture(beside!.stand).lean).toBeCloseTo(leanOf({ ...scaled, ankle } as Build, 2)!, 9);
    expect(lifters).toHaveLength(23);
    expect(lifters.some(({ row }) => row === 0)).toBe(false);
  });
});

describe('before and after', () => {
  /** A lifter in two rows, and a sheet in which the ankle was measured again. */
  function tested(): Session {
    const own = Session.create();
    const texts = (names: readonly string[], ...rows: string[][]) => ({ columns: [...names], texts: rows });
    const columns = (names: readonly string[]) =>
      names.map((name) => ({
        name,
        kind:
          name === 'athlete'
            ? ('text' as const)
            : name === 'on_day'
              ? ('date' as const)
              : ('number' as const),
      }));
    const roster = ['athlete', 'on_day', 'stature', 'femur', 'tibia', 'trunk', 'ankle', 'foot'];
    own.execute({ do: 'add-sheet', name: 'roster', columns: columns(roster) });
    own.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      ...texts(
        roster,
        ['Ada', '2025-01-06', '170', '42', '40', '50', '28', '25'],
        ['Ben', '2025-01-06', '180', '44', '43', '52', '35', '27'],
        ['ada ', '2025-03-10', '171', '42', '40', '50', '34', '25'],
      ),
    });
    const again = ['athlete', 'on_day', 'ankle_now'];
    own.execute({ do: 'add-sheet', name: 'later', label: 'Later tests', columns: columns(again) });
    own.execute({
      do: 'set-cells',
      sheet: 'later',
      row: 0,
      ...texts(again, ['Ben', '2025-03-11', '39'], ['Ada', '2025-03-11', '36'], ['Ada', '2025-05-01', '']),
    });
    return own;
  }
  const ada = { femur: 42, tibia: 40, trunk: 50, foot: 25 };

  test('two rows of one lifter are drawn as measured, not scaled', () => {
    const figure = tested().figure('roster', 0, { beside: 2 });
    expect(figure.lifters.map(({ same }) => same ?? false)).toEqual([false, true]);
    expect([figure.beside!.scale, figure.beside!.by]).toEqual([1, 'same lifter']);
    expect(posture(figure.flat).lean).toBeCloseTo(leanOf({ ...ada, ankle: 28 })!, 6);
    expect(posture(figure.beside!.stand).lean).toBeCloseTo(leanOf({ ...ada, ankle: 34 })!, 6);
  });

  test('a test in another sheet puts its ankle range into this row’s lengths; a row without one is not offered', () => {
    const session = tested();
    expect(session.figure('roster', 0).tests.map(({ row }) => row)).toEqual([1]);
    const [test] = session.figure('roster', 0).tests;
    const figure = session.figure('roster', 0, { test: { sheet: test!.sheet, row: test!.row } });
    expect(figure.beside!.title).toBe('11 Mar 2025');
    expect(posture(figure.beside!.stand).lean).toBeCloseTo(leanOf({ ...ada, ankle: 36 })!, 6);
    expect(posture(figure.flat).lean).toBeCloseTo(leanOf({ ...ada, ankle: 28 })!, 6);
  });

  test('a test that is not there is refused', () => {
    expect(() => tested().figure('roster', 0, { test: { sheet: 'later', row: 9 } })).toThrow(/no row 10/);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rangeOf } from '../../../functions/core/value.ts';
import { between, build, give, holds, lifters, number, type Someone, setup } from './lifter.ts';

const close = (a: number, b: number, within = 1e-8): void => {
  if (!(Math.abs(a - b) <= within)) expect.fail(`${a} and ${b} differ by ${Math.abs(a - b)}`);
};
const lean = (l: Someone, lift = l.lift, depth = l.depth): number =>
  number('LEAN.AT', depth, ...build(l), lift, ...setup(l));
const stands = (l: Someone, lift = l.lift, depth = l.depth): boolean =>
  holds('LEAN.AT', depth, ...build(l), lift, ...setup(l));

describe('inverse pairs', () => {
  test('ANKLE.FROM.WALL and ANKLE.TO.WALL', () => {
    fc.assert(
      fc.property(
        between(-10, 70),
        between(15, 80),
        fc.option(between(10, 45), { nil: undefined }),
        (a, s, foot) => {
          const distance = number('ANKLE.TO.WALL', a, s, foot);
          fc.pre(distance >= -10 && distance <= 40 && Math.abs(a) < 69.99 && a > -9.99);
          close(number('ANKLE.FROM.WALL', distance, s, foot), a, 1e-7);
        },
      ),
    );
  });
  test('LIFT.PITCH and LIFT.FROM.PITCH', () => {
    fc.assert(
      fc.property(between(0, 15), between(10, 45), (lift, foot) => {
        fc.pre(lift < 0.7 * foot);
        close(number('LIFT.FROM.PITCH', number('LIFT.PITCH', lift, foot), foot), lift);
      }),
    );
  });
  test('SEG.FEMUR, SEG.TIBIA and SEG.TRUNK put the heights back together', () => {
    fc.assert(
      fc.property(between(30, 50), between(30, 50), between(40, 60), between(5, 9), (f, s, t, ankle) => {
        const [knee, hip, shoulder] = [ankle + s, ankle + s + f, ankle + s + f + t];
        close(number('SEG.TIBIA', knee, ankle), s);
        close(number('SEG.FEMUR', hip, knee), f);
        close(number('SEG.TRUNK', shoulder, hip), t);
      }),
    );
  });
  test('SEG.CRURAL is 100 over SEG.RATIO of femur and tibia', () => {
    fc.assert(
      fc.property(between(15, 80), between(15, 80), (f, s) => {
        close(number('SEG.CRURAL', s, f) * number('SEG.RATIO', f, s), 100);
      }),
    );
  });
  test('ANKLE.NEEDED and LEAN.AT', () => {
    fc.assert(
      fc.property(lifters, (l) => {
        fc.pre(stands(l));
        const beta = lean(l);
        // near the crest of what can be balanced the lean hangs on the last digits of the ankle
        fc.pre(beta > -30 && beta < 80);
        const needed = number('ANKLE.NEEDED', beta, l.femur, l.tibia, l.trunk, l.lift, l.depth, ...setup(l));
        close(needed, l.ankle, 1e-6);
      }),
    );
  });
});

describe('parts of the lean', () => {
  test('LEAN.PART of the four adds up to the lifter’s lean less the reference’s', () => {
    fc.assert(
      fc.property(lifters, between(25, 45), (l, reference) => {
        const sum = l.femur + l.tibia + l.trunk;
        const foot = l.foot ?? (0.152 / 0.779) * sum;
        const held = [l.placement, foot, l.stance] as const;
        const parts = ['femur', 'tibia', 'trunk', 'ankle'].map((part) =>
          give('LEAN.PART', part, ...build(l), reference, l.lift, ...held),
        );
        fc.pre(parts.every((part) => typeof part === 'number'));
        const mine = number('LEAN.PARALLEL', ...build(l), l.lift, ...held);
        const theirs = number(
          'LEAN.PARALLEL',
          0.2987 * sum,
          0.3114 * sum,
          0.3899 * sum,
          reference,
          l.lift,
          ...held,
        );
        close(
          (parts as number[]).reduce((a, b) => a + b),
          mine - theirs,
        );
      }),
    );
  });
  test('LEAN.PART of a lifter built like the reference is 0', () => {
    for (const part of ['femur', 'tibia', 'trunk', 'ankle'])
      close(number('LEAN.PART', part, 0.2987 * 130, 0.3114 * 130, 0.3899 * 130, 38), 0);
  });
  test('LEAN.EXPLAIN of the seven adds up to the observed lean, and build is the three lengths', () => {
    fc.assert(
      fc.property(lifters, between(-20, 80), between(0, 45), between(25, 45), (l, seen, shank, reference) => {
        const part = (name: string) =>
          give('LEAN.EXPLAIN', name, seen, shank, l.depth, ...build(l), reference, l.lift, ...setup(l));
        const values = ['reference', 'femur', 'tibia', 'trunk', 'ankle', 'use', 'balance'].map(part);
        fc.pre(values.every((value) => typeof value === 'number'));
        const [, femur, tibia, trunk] = values as number[];
        close(
          (values as number[]).reduce((a, b) => a + b),
          seen,
        );
        close(Number(part('build')), femur! + tibia! + trunk!);
      }),
    );
  });
  test('LEAN.EXPLAIN takes the four measures apart as LEAN.PART does, at parallel', () => {
    fc.assert(
      fc.property(lifters, between(25, 45), (l, reference) => {
        for (const part of ['femur', 'tibia', 'trunk', 'ankle']) {
          const theirs = give('LEAN.PART', part, ...build(l), reference, l.lift, ...setup(l));
          const ours = give('LEAN.EXPLAIN', part, 40, 30, 0, ...build(l), reference, l.lift, ...setup(l));
          if (typeof theirs === 'number') close(Number(ours), theirs);
          else expect(ours).toMatchObject({ code: '#NUM!' });
        }
      }),
    );
  });
  test('LEAN.ERROR grows in proportion to its SDs', () => {
    fc.assert(
      fc.property(lifters, between(0.1, 3), between(0.1, 5), (l, length, ankle) => {
        const one = give('LEAN.ERROR', length, ankle, ...build(l), l.lift, ...setup(l));
        fc.pre(typeof one === 'number');
        const two = number('LEAN.ERROR', 2 * length, 2 * ankle, ...build(l), l.lift, ...setup(l));
        close(two, 2 * Number(one), 1e-9 * Math.max(1, two));
      }),
    );
  });
});

describe('balance', () => {
  test('LEAN.OFFSET is 0 at the lean of LEAN.AT, behind mid-foot when more upright, ahead when more bent', () => {
    fc.assert(
      fc.property(lifters, (l) => {
        fc.pre(stands(l));
        const beta = lean(l);
        fc.pre(beta > -25 && beta < 70);
        const offset = (at: number) => number('LEAN.OFFSET', at, ...build(l), l.lift, l.depth, ...setup(l));
        close(offset(beta), 0, 1e-9);
        expect(offset(beta - 5)).toBeLessThan(0);
        expect(offset(beta + 5)).toBeGreaterThan(0);
      }),
    );
  });
  test('LEAN.LOADED with arms forward is LEAN.AT, whatever the body mass', () => {
    fc.assert(
      fc.property(lifters, between(10, 400), (l, mass) => {
        const someone = { ...l, placement: 'arms-forward' as const };
        fc.pre(stands(someone));
        close(
          number('LEAN.LOADED', mass, 0, ...build(l), l.lift, l.depth, 'arms-forward', l.foot, l.stance),
          lean(someone),
        );
      }),
    );
  });
  test('LEAN.LOADED comes to the bar rule as the bar outweighs the body', () => {
    fc.assert(
      fc.property(lifters, (l) => {
        fc.pre(l.placement !== 'arms-forward' && stands(l) && Math.abs(lean(l)) < 60);
        // the body's share is at least 10 of 710 kg: within a few degrees, and always between rule and body
        const heavy = give('LEAN.LOADED', 10, 700, ...build(l), l.lift, l.depth, ...setup(l));
        fc.pre(typeof heavy === 'number');
        close(Number(heavy), lean(l), 3);
      }),
    );
  });
  test('lean is symmetric about parallel, and most there', () => {
    fc.assert(
      fc.property(lifters, between(0, 45), (l, depth) => {
        fc.pre(stands(l, l.lift, 0) && stands(l, l.lift, depth));
        close(lean(l, l.lift, depth), lean(l, l.lift, -depth));
        expect(lean(l, l.lift, depth)).toBeLessThanOrEqual(lean(l, l.lift, 0) + 1e-9);
      }),
    );
  });
});

describe('what more of a measure does', () => {
  const changes: readonly (readonly [string, (l: Someone) => Someone, -1 | 1, string])[] = [
    ['more ankle range', (l) => ({ ...l, ankle: l.ankle + 1 }), -1, 'Fuglsang 2017'],
    ['a longer femur', (l) => ({ ...l, femur: l.femur + 1, foot: l.foot ?? 26 }), 1, 'Demers 2018'],
    ['a longer trunk', (l) => ({ ...l, trunk: l.trunk + 1, foot: l.foot ?? 26 }), -1, 'Demers 2018'],
    ['a lift', (l) => ({ ...l, lift: l.lift + 0.5 }), -1, 'Lu 2022'],
    ['a longer tibia', (l) => ({ ...l, tibia: l.tibia + 1, foot: l.foot ?? 26 }), -1, 'common practice'],
  ];
  test.each(changes)('%s, and the lean goes the way that is published', (_, change, way) => {
    fc.assert(
      fc.property(lifters, (l) => {
        const before = { ...l, foot: l.foot ?? 26, depth: 0 };
        const after = change(before);
        fc.pre(stands(before) && stands(after));
        // a trunk that leans back already, or stands upright, has no lean to spare
        fc.pre(lean(before) > 8 && lean(after) > 8);
        expect(Math.sign(lean(after) - lean(before))).toBe(way);
      }),
    );
  });
});

describe('lifts', () => {
  test('LIFT.AS.TIBIA, LIFT.AS.FEMUR and LIFT.AS.ANKLE each give the lean of the lift on the flat', () => {
    let seen = 0;
    fc.assert(
      fc.property(lifters, between(0.1, 4), (l, lift) => {
        fc.pre(stands(l, lift));
        const foot = l.foot ?? (0.152 / 0.779) * (l.femur + l.tibia + l.trunk);
        const fixed = { ...l, foot };
        const target = lean(fixed, lift);
        fc.pre(target < 80);
        for (const [what, change] of [
          ['TIBIA', (by: number) => ({ ...fixed, tibia: l.tibia + by })],
          ['FEMUR', (by: number) => ({ ...fixed, femur: l.femur - by })],
          ['ANKLE', (by: number) => ({ ...fixed, ankle: l.ankle + by })],
        ] as const) {
          const by = give(`LIFT.AS.${what}`, lift, ...build(l), l.depth, l.placement, foot, l.stance);
          if (typeof by !== 'number') continue;
          seen++;
          close(lean(change(by), 0), target, 1e-6);
        }
      }),
    );
    expect(seen).toBeGreaterThan(100);
  });
  test('LIFT.FOR.LEAN reaches its lean, and a micrometre less does not', () => {
    let seen = 0;
    fc.assert(
      fc.property(lifters, between(0, 12), between(0, 15), (l, less, most) => {
        fc.pre(stands(l, 0) && lean(l, 0) - less > -30);
        const target = lean(l, 0) - less;
        const least = give('LIFT.FOR.LEAN', target, ...build(l), l.depth, most, ...setup(l));
        if (typeof least !== 'number') {
          expect(least).toMatchObject({ code: '#N/A' });
          if (stands(l, most)) expect(lean(l, most)).toBeGreaterThan(target);
          return;
        }
        seen++;
        expect(least).toBeLessThanOrEqual(most);
        expect(lean(l, least)).toBeLessThanOrEqual(target);
        if (least > 1e-6 && stands(l, least - 1e-6)) expect(lean(l, least - 1e-6)).toBeGreaterThan(target);
      }),
      { numRuns: 300 },
    );
    expect(seen).toBeGreaterThan(100);
  });
  test('LIFT.FOR.DEPTH reaches its depth, and .001 cm less does not', () => {
    let seen = 0;
    fc.assert(
      fc.property(lifters, between(-40, 40), (l, depth) => {
        const deepest = (lift: number) => give('LEAN.DEEPEST', ...build(l), lift, ...setup(l));
        const least = give('LIFT.FOR.DEPTH', depth, ...build(l), 5, ...setup(l));
        if (typeof least !== 'number') {
          expect(least).toMatchObject({ code: '#N/A' });
          return;
        }
        seen++;
        expect(deepest(least)).toBeLessThanOrEqual(depth);
        const less = least > 0.001 ? deepest(least - 0.001) : undefined;
        if (typeof less === 'number') expect(less).toBeGreaterThan(depth);
      }),
      { numRuns: 200 },
    );
    expect(seen).toBeGreaterThan(50);
  });
  test('LIFT.PICK takes the smallest height that is enough', () => {
    fc.assert(
      fc.property(between(0, 15), fc.array(between(0, 15), { minLength: 1 }), (lift, heights) => {
        const picked = give('LIFT.PICK', lift, rangeOf(heights.length, 1, heights));
        const enough = heights.filter((height) => height >= lift);
        if (enough.length > 0) expect(picked).toBe(Math.min(...enough));
        else expect(picked).toMatchObject({ code: '#N/A' });
      }),
    );
  });
});

describe('moments', () => {
  // check 23 of statics: whatever the posture, hip and knee together carry the weights over the thigh's length
  test('hip and knee add up to g [W_above F_x + W_thigh × .567 F_x]', () => {
    const g = 9.80665;
    fc.assert(
      fc.property(
        between(-30, 90),
        between(15, 80),
        between(20, 100),
        between(10, 400),
        between(0, 700),
        between(-60, 90),
        fc.constantFrom('high-bar', 'low-bar', 'front', 'goblet'),
        between(0, 60),
        (beta, femur, trunk, mass, bar, depth, placement, stance) => {
          const hip = number('MOMENT.HIP', beta, trunk, mass, bar, placement);
          const knee = number('MOMENT.KNEE', beta, femur, trunk, mass, bar, depth, placement, stance);
          const rad = Math.PI / 180;
          const ahead = (femur / 100) * Math.cos(depth * rad) * Math.cos(stance * rad);
          const expected = g * ((0.678 * mass + bar) * ahead + 0.2 * mass * 0.567 * ahead);
          close(hip + knee, expected, 1e-9 * Math.max(1, Math.abs(hip), Math.abs(knee)));
        },
      ),
    );
  });
  test('compression and shear are the two sides of the weight above, with the muscle’s pull', () => {
    fc.assert(
      fc.property(
        between(-30, 90),
        between(40, 66),
        between(40, 160),
        between(0, 300),
        (beta, trunk, mass, bar) => {
          const muscle = number('BACK.MUSCLE', beta, trunk, mass, bar);
          const along = number('BACK.COMPRESSION', beta, trunk, mass, bar) - Math.abs(muscle);
          const across = number('BACK.SHEAR', beta, trunk, mass, bar);
          close(Math.hypot(along, across), 9.80665 * (0.536 * mass + bar), 1e-6);
          close(muscle * 0.06, number('MOMENT.BACK', beta, trunk, mass, bar), 1e-8);
        },
      ),
    );
  });
});

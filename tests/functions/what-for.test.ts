import { describe, expect, test } from 'vitest';
import { invoke } from '../../functions/core/invoke.ts';
import { registry } from '../../functions/registry.ts';
import * as say from '../../functions/tables/sources.ts';

// What the help says the numbers may be used for. Its figures are checked against the functions and the papers.

const call = (name: string, ...args: (number | string)[]): number =>
  invoke(registry.get(name)!, args) as number;

/** The survey's mean man (Gordon et al. 2014, NATICK/TR-15/007, ANSUR II): femur, trunk in cm. */
const [femur, trunk] = [40.927, 53.981];
const hipShare = (lean: number): number =>
  call(
    'MOMENT.SHARE',
    call('MOMENT.HIP', lean, trunk, 85, 85),
    call('MOMENT.KNEE', lean, femur, trunk, 85, 85),
  );

describe('what the numbers may be used for', () => {
  test('the hips’ share: .45 at the minimum lean, .61 at the observed lean, .62 in the study', () => {
    // Wretenberg 1996, MSSE 28:218: 216 and 131 N·m per leg, high bar
    expect((216 / (216 + 131)).toFixed(2)).toBe('0.62');
    // Sato et al. 2013, Int J Sports Sci Coach 8:571–578: trunk 39.3° from the vertical
    expect(hipShare(39.3).toFixed(2)).toBe('0.61');
    const minimum = call('LEAN.PARALLEL', femur, 41.875, trunk, 38, 0, 'high-bar', 27.118);
    expect(Math.round(minimum)).toBe(29);
    expect(hipShare(minimum).toFixed(2)).toBe('0.45');
    expect(say.observedPosture).toMatch(/29°.*\.45.*\.62.*39\.3°.*\.61/);
  });

  test('with a light bar the two rules part: 44.5° and 71.8°', () => {
    // the closed forms of plane statics, reckoned apart from this project
    expect(call('LEAN.PARALLEL', 44.5, 41, 50, 28).toFixed(1)).toBe('44.5');
    expect(call('LEAN.LOADED', 80, 20, 44.5, 41, 50, 28).toFixed(1)).toBe('71.8');
    expect(say.twoRulesNote).toMatch(/44\.5°.*71\.8°/);
  });

  const helpOf = (name: string): string =>
    [...(registry.get(name)!.notes ?? []), ...(registry.get(name)!.cautions ?? [])].join(' ');

  // MOMENT.ARMS is the textbook sum of levers: no posture enters it.
  const loads = [...registry.keys()].filter(
    (name) => /^(MOMENT|BACK)\./.test(name) && name !== 'MOMENT.ARMS',
  );
  test.each(loads)('%s says that it is meant for an observed posture', (name) => {
    expect(helpOf(name)).toContain(say.observedPosture);
  });

  test.each(['LEAN.PARALLEL', 'LEAN.AT', 'LEAN.LOADED'])(
    '%s names its minimum and what lifters use',
    (name) => {
      expect(registry.get(name)!.result.about).toContain('minimum');
      expect(helpOf(name)).toContain(say.minimumLeanNote);
      expect(helpOf(name)).toContain(say.rangeUsedNote);
      expect(helpOf(name)).toContain(say.twoRulesNote);
    },
  );

  test.each(['LEAN.DEEPEST', 'LEAN.LIMITER', 'LEAN.GAIN', 'LIFT.FOR.DEPTH'])(
    '%s says that limits left at their defaults are assumed',
    (name) => {
      expect(helpOf(name)).toContain(say.limitsCaution);
    },
  );

  test.each(['LIFT.FOR.LEAN', 'LIFT.FOR.DEPTH', 'LIFT.PICK', 'LIFT.CHANGE'])(
    '%s gives the whole advice on heels',
    (name) => {
      expect(helpOf(name)).toContain(say.heelAdvice);
    },
  );

  test('3400 and 6400 N are named as limits of compression alone', () => {
    expect(helpOf('BACK.COMPRESSION')).toContain('compression alone');
    expect(helpOf('BACK.SHEAR')).toContain('Shear has no such line');
  });
});

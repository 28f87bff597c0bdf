import type { Step } from '../core/define.ts';
import type { Gains } from './limiter.ts';
import { shown, step } from './steps.ts';

/** The working of what limits the depth: the deepest position, and the gain of each limit loosened by 1°. */
export function gainSteps(gains: Gains | undefined): Step[] {
  const told = (value: number | undefined) => shown(value ?? Number.NaN, 'no posture');
  return [
    step('Deepest position', 'd', 'LEAN.DEEPEST', told(gains?.deepest), 'deg'),
    step('Deeper by 1° more ankle', 'ankle', 'd − LEAN.DEEPEST(ankle + 1)', told(gains?.ankle), 'deg'),
    step('Deeper by 1° more knee', 'knee', 'd − LEAN.DEEPEST(max_knee + 1)', told(gains?.knee), 'deg'),
    step('Deeper by 1° more hip', 'hip', 'd − LEAN.DEEPEST(max_hip + 1)', told(gains?.hip), 'deg'),
    step('Deeper by 1° more lean', 'lean', 'd − LEAN.DEEPEST(max_lean + 1)', told(gains?.lean), 'deg'),
  ];
}

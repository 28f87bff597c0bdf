import { published } from '../core/source.ts';

export const ratioSources = [
  published('Lolli et al. 2019, Br J Sports Med 53:921–922 (the ratio is coupled to itself)'),
  published('Impellizzeri et al. 2021, Sports Med 51:581–592 (no evidence for use in injury prevention)'),
] as const;

export const ratioCautions: readonly string[] = [
  'A ratio of recent to earlier load, not shown to predict or prevent injury. No band of it is safe or unsafe, and none is drawn.',
];

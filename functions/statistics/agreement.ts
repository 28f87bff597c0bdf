import { type Issue, isIssue } from '../core/issue.ts';
import { published } from '../core/source.ts';
import type { Range } from '../core/value.ts';
import { differencesOf } from './columns.ts';
import { mean, standardDeviation } from './describe.ts';
import { zOf } from './distributions.ts';
import { tooFew } from './few.ts';

export const agreementSource = published('Bland & Altman 1986, Lancet 1:307–310');

/** Mean and SD of the differences a − b and z of the confidence, or why there are none. */
function agreement(
  a: Range,
  b: Range,
  confidence: number,
): { readonly bias: number; readonly sd: number; readonly z: number; readonly n: number } | Issue {
  const differences = differencesOf(a, b);
  if (differences.length < 2) return tooFew('a', differences.length, 2, 'pair');
  return {
    bias: mean(differences),
    sd: standardDeviation(differences),
    z: zOf(confidence),
    n: differences.length,
  };
}

export function limit(a: Range, b: Range, confidence: number, side: 1 | -1): number | Issue {
  const found = agreement(a, b, confidence);
  return isIssue(found) ? found : found.bias + side * found.z * found.sd;
}

export function limitSteps(a: Range, b: Range, confidence: number, side: 1 | -1) {
  const found = agreement(a, b, confidence);
  if (isIssue(found)) return [];
  const { bias, sd, z, n } = found;
  return [
    { name: 'pairs', symbol: 'n', value: n, unit: '' },
    { name: 'mean difference a − b', symbol: 'bias', value: bias, unit: '' },
    { name: 'SD of the differences', symbol: 's', value: sd, unit: '' },
    { name: `normal quantile of ${confidence}`, symbol: 'z', value: z, unit: '' },
    { name: 'limit', rule: side < 0 ? 'bias − z·s' : 'bias + z·s', value: bias + side * z * sd, unit: '' },
  ] as const;
}

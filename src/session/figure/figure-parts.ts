import type { Argument } from '../../../functions/core/value.ts';
import { parts, referenceBuild } from '../../../functions/posture/part.ts';
import type { ReadContext } from '../open-book.ts';
import type { FigureParts } from './figure-answers.ts';
import { ask, build, type Known, settingOf, setup } from './figure-lifter.ts';

/** What LEAN.PART takes for the reference's ankle where the book says nothing, deg. */
export const REFERENCE_ANKLE = 38;

/**
 * Where the minimum lean at parallel on the flat comes from, whatever lift or depth is tried out: the parts of femur,
 * tibia, trunk and ankle, which add up to the difference from a lifter of the same size with the reference's build and
 * ankle. Null where LEAN.PART has no answer.
 */
export function partsOf(context: ReadContext, known: Known): FigureParts | null {
  if (known.missing.length) return null;
  const ankle = settingOf(context, 'reference_ankle') ?? REFERENCE_ANKLE;
  const values = parts.map((part) => ask('LEAN.PART', [part, ...build(known), ankle, 0, ...setup(known)]));
  const lengths = (['femur', 'tibia', 'trunk'] as const).map((one) => known.number(one)!);
  const sum = lengths.reduce((all, one) => all + one, 0);
  // The reference stands on this lifter's foot; left out, the foot follows from the same sum either way.
  const reference: readonly Argument[] = [...referenceBuild(sum), ankle];
  const from = ask('LEAN.PARALLEL', [...reference, 0, ...setup(known)]);
  const to = ask('LEAN.PARALLEL', [...build(known), 0, ...setup(known)]);
  if (typeof from !== 'number' || typeof to !== 'number') return null;
  if (!values.every((value) => typeof value === 'number')) return null;
  return {
    lean: to,
    reference: from,
    referenceAnkle: ankle,
    items: parts.map((name, i) => ({ name, value: values[i] as number })),
  };
}

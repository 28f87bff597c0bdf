import { invoke } from '../../../functions/core/invoke.ts';
import type { NumberParameter } from '../../../functions/core/parameter.ts';
import { registry } from '../../../functions/registry.ts';
import type { Plausibility, PlausibleColumn } from '../../intake/api.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';

/** Arguments of functions that are also what people measure and write down: a column of that name means the same. */
const measured = new Set([
  'femur',
  'tibia',
  'trunk',
  'foot',
  'ankle',
  'stature',
  'sitting_height',
  'trochanter_height',
  'knee_height',
  'ankle_height',
  'shoulder_height',
  'lift',
  'mass',
  'bar',
  'reps',
  'rir',
  'rpe',
  'minutes',
]);

const dimensionOf = (unit: string): Dimension | undefined =>
  (Object.keys(dimensions) as Dimension[]).find((d) => dimensions[d] === unit);

/**
 * What the intake should doubt, read off the functions: a value that a function would refuse is doubted when it comes in,
 * and lengths that do not belong to one body are told by SEG.CHECK.
 */
export function plausibility(): Plausibility {
  const columns = new Map<string, PlausibleColumn>();
  for (const { parameters } of registry.values())
    for (const parameter of parameters)
      if (parameter.kind === 'number' && measured.has(parameter.name) && !columns.has(parameter.name))
        columns.set(parameter.name, columnFrom(parameter));
  return {
    columns: [...columns.values()],
    rows: [
      { about: 'segment lengths', needs: ['femur', 'tibia', 'trunk'], wants: ['stature'], check: oneBody },
    ],
  };
}

function columnFrom({ name, unit, bounds }: NumberParameter<unknown>): PlausibleColumn {
  return {
    names: [name],
    dimension: dimensionOf(unit),
    min: bounds.min ?? bounds.above,
    max: bounds.max ?? bounds.below,
    because: bounds.because,
  };
}

function oneBody(values: readonly (number | null)[]): string | null {
  const check = registry.get('SEG.CHECK');
  const outcome = check && invoke(check, values);
  return typeof outcome === 'string' && outcome !== 'ok' ? outcome : null;
}

/** The tonnage column of a sheet that is made from a log: sets × repetitions × load, row by row. */
import type { Column } from '../../book/model.ts';
import { properName } from '../../book/names.ts';
import { headingKey, synonymIndex, synonyms } from '../detect/index.ts';
import type { Match } from './map.ts';

const lines = synonymIndex(synonyms);
const TOTALS = new Set(['tonnage', 'volume', 'volume load', 'total volume', 'total load']);

/** Null where the log lacks sets, repetitions or load, or has its own total. */
export function tonnageColumn(matches: readonly Match[], taken: (name: string) => boolean): Column | null {
  const columns = matches.map(({ column }) => column);
  if (columns.some(({ label }) => TOTALS.has(headingKey(label)))) return null;
  const find = (word: string): Column | undefined =>
    columns.find(({ kind, label }) => kind === 'number' && lines.get(headingKey(label)) === lines.get(word));
  const [sets, reps, load] = [find('sets'), find('reps'), find('load')];
  if (!sets || !reps || !load) return null;
  const of = [sets, reps, load].map(({ name }) => name).join(', ');
  const name = properName('Tonnage', taken);
  return {
    id: name,
    name,
    label: 'Tonnage',
    kind: 'number',
    ...(load.dimension === undefined ? {} : { dimension: load.dimension }),
    ...(load.unit === undefined ? {} : { unit: load.unit }),
    formula: `IF(COUNT(${of}) < 3, "", TRAIN.VOLUME(${of}))`,
    note: 'Sets × repetitions × load.',
    format: { digits: 0 },
  };
}

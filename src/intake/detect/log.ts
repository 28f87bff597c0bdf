/** What headings mean in a training log: "Weight" is the load there, and a set number counts rows. */
import type { Choices, ColumnFinding, Finding } from '../api.ts';
import { note } from '../sentences/index.ts';
import { headingKey, synonymIndex, synonyms } from './synonyms.ts';

const lines = synonymIndex(synonyms);
const isIn = (label: string, word: string): boolean =>
  lines.get(headingKey(label)) === lines.get(word) && lines.has(headingKey(label));
/** In a roster these are the body's mass, in a log the bar's. */
const WEIGHT = new Set(['weight', 'wt', 'gewicht', 'poids', 'peso']);

/** Repetitions, or sets of an exercise, make a table a log. */
const isLog = (labels: readonly string[]): boolean =>
  labels.some((label) => isIn(label, 'reps')) ||
  (labels.some((label) => isIn(label, 'exercise')) &&
    labels.some((label) => isIn(label, 'set') || isIn(label, 'sets')));

/** The columns of a log with "Weight" called the load, unless the file has a load beside it. */
export function asInLog(
  columns: readonly ColumnFinding[],
  labelsThere: readonly string[],
): readonly ColumnFinding[] {
  const labels = columns.map(({ label }) => label);
  if (!isLog([...labels, ...labelsThere]) || labels.some((label) => isIn(label, 'load'))) return columns;
  const at = columns.findIndex(({ label, kind }) => kind.value === 'number' && WEIGHT.has(headingKey(label)));
  return columns.map((column, i) => (i === at ? { ...column, label: 'Load' } : column));
}

/** A set number in a log without a count of sets: each row may be one set. Null where the file has no such thing. */
export function findRowIsSet(
  columns: readonly ColumnFinding[],
  choices: Choices,
): { readonly heading: string; readonly finding: Finding<boolean> } | null {
  const find = (word: string) =>
    columns.find(({ label, kind }) => kind.value === 'number' && isIn(label, word));
  const set = find('set');
  if (!set || !find('reps') || columns.some(({ label }) => isIn(label, 'sets'))) return null;
  const heading = set.heading || set.label;
  return {
    heading,
    finding:
      choices.rowIsSet === undefined
        ? { value: false, certainty: 'doubtful', because: note('row-is-set-open', { word: heading }) }
        : { value: choices.rowIsSet, certainty: 'sure', because: note('chosen') },
  };
}

/** A column of the sheet that counts sets. */
export const countsSets = (label: string): boolean => isIn(label, 'sets');

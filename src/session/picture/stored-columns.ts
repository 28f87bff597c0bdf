/** The columns in which a sheet stores a picture's points. */
import type { Column } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { type Observation, POINTS } from './points.ts';

/** The columns that a digitised frame is stored in, by name, each with what it takes from it. */
export const STORED: readonly {
  readonly name: string;
  readonly label: string;
  readonly kind: Column['kind'];
  readonly unit?: string;
  readonly dimension?: Column['dimension'];
  readonly choices?: readonly string[];
  readonly of: (seen: Observation) => number | string | null;
}[] = [
  { name: 'picture', label: 'Picture', kind: 'text', of: ({ file }) => file },
  {
    name: 'frame_time',
    label: 'Frame time (s)',
    kind: 'number',
    of: ({ time }) => (time === null ? null : round(time, 4)),
  },
  {
    name: 'facing',
    label: 'Facing',
    kind: 'choice',
    choices: ['right', 'left'],
    of: ({ facing }) => facing,
  },
  ...POINTS.flatMap(({ id, label }) =>
    (['x', 'y'] as const).map((axis) => ({
      name: `${id}_${axis}`,
      label: `${label} ${axis}`,
      kind: 'number' as const,
      of: ({ points }: Observation) => (points[id] ? round(points[id][axis], 2) : null),
    })),
  ),
  {
    name: 'level_line',
    label: 'Level line',
    kind: 'choice',
    choices: ['floor', 'plumb'],
    of: ({ line, points }) => (points.level_1 && points.level_2 ? line : null),
  },
  {
    name: 'known_length',
    label: 'Known length',
    kind: 'number',
    dimension: 'length',
    unit: 'cm',
    of: ({ length }) => length,
  },
  {
    name: 'camera_distance',
    label: 'Camera distance',
    kind: 'number',
    dimension: 'length',
    unit: 'cm',
    of: ({ camera }) => camera,
  },
  {
    name: 'length_nearer',
    label: 'Known length nearer by',
    kind: 'number',
    dimension: 'length',
    unit: 'cm',
    of: ({ nearer }) => nearer,
  },
  { name: 'picture_sha256', label: 'Fingerprint of the picture', kind: 'text', of: ({ hash }) => hash },
];

const round = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Stored columns that a sheet cannot do without for a picture's points. */
const NEEDED = STORED.filter(
  ({ name }) => /^(toe|heel|ankle|knee|hip|shoulder)_[xy]$/.test(name) || name === 'facing',
);

/** Labels of the columns that a sheet lacks. */
export const missingColumns = (sheet: { readonly columns: readonly Column[] }): readonly string[] =>
  NEEDED.filter(({ name }) => !columnInRole(sheet, name)).map(({ label }) => label);

/**
 * What a column can be, one record each: what figure, handouts, checks, charts and pictures look for in a sheet. The key
 * is what a book's file says; it is also the first name by which a column is recognised that does not say what it is.
 */

import type { Dimension } from '../../units/dimension.ts';
import type { ColumnKind } from '../model.ts';

/** What the values of a column in a role are: a dimension, or a kind. `who` also takes numbers that stand for people. */
type RoleSort = Dimension | 'number' | 'text' | 'date' | 'who';

export interface Role {
  readonly label: string;
  readonly group: string;
  readonly is: RoleSort;
  /** Further names by which a column is recognised, in lower case. */
  readonly names?: readonly string[];
  /** Words of a name or label by which a column is recognised after all others. */
  readonly like?: RegExp;
}

/** The role of a column that is none of these, whatever it is called. */
export const NO_ROLE = 'none';

/** A sheet of later tests calls its columns like the roster, or says that they are the later ones. */
export const laterEndings = ['', '_now', '_after', '_again'] as const;

/** Measures that a later test takes again. */
export const takenAgain = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'mass', 'stature'] as const;

const one = (
  group: string,
  label: string,
  is: RoleSort,
  names: readonly string[] = [],
  like?: RegExp,
): Role => ({ group, label, is, names, ...(like ? { like } : {}) });

const main: Readonly<Record<string, Role>> = {
  athlete: one('Person', 'Athlete', 'who', [
    ...['lifter', 'player', 'participant', 'client', 'name'].flatMap((name) => [name, `${name}s`]),
    ...['athletes', 'athlete_name', 'lifter_name', 'player_name', 'full_name'],
  ]),
  birth_date: one('Person', 'Birth date', 'date', ['date_of_birth', 'birthdate', 'birthday', 'dob', 'born']),
  sex: one('Person', 'Sex', 'text', ['gender']),
  group: one('Person', 'Group', 'text'),
  team: one('Person', 'Team', 'text'),
  squad: one('Person', 'Squad', 'text'),
  tested: one(
    'Person',
    'Test date',
    'date',
    ['test_date', 'date_of_test', 'retested', 'filmed'],
    /test|measur|screen|assess|examin/i,
  ),
  mass: one('Person', 'Body mass', 'mass', ['body_mass', 'bodymass', 'bodyweight', 'body_weight']),
  stature: one('Person', 'Stature', 'length', ['standing_height', 'body_height']),
  femur: one('Build', 'Femur', 'length', ['femur_length', 'thigh', 'thigh_length']),
  tibia: one('Build', 'Tibia', 'length', ['tibia_length', 'shank', 'shank_length', 'lower_leg']),
  trunk: one('Build', 'Trunk', 'length', ['trunk_length', 'torso', 'torso_length']),
  foot: one('Build', 'Foot', 'length', ['foot_length']),
  ankle: one('Ankle', 'Ankle range', 'angle', ['ankle_range', 'dorsiflexion']),
  ankle_left: one('Ankle', 'Ankle range, left', 'angle', ['left_ankle', 'dorsiflexion_left']),
  ankle_right: one('Ankle', 'Ankle range, right', 'angle', ['right_ankle', 'dorsiflexion_right']),
  wall_left: one('Ankle', 'Knee to wall, left', 'length', ['knee_to_wall_left', 'ktw_left']),
  wall_right: one('Ankle', 'Knee to wall, right', 'length', ['knee_to_wall_right', 'ktw_right']),
  lift: one('Squat', 'Heel lift', 'length', ['heel_lift', 'heel_height']),
  stance: one('Squat', 'Toe-out angle', 'angle', ['toe_out']),
  placement: one('Squat', 'Bar placement', 'text', ['bar_placement']),
  bar: one('Squat', 'Bar load', 'mass', ['bar_load']),
  depth: one('Squat', 'Depth', 'angle'),
  lean: one('Model', 'Minimum lean', 'angle'),
  lean_used: one('Model', 'Minimum lean, part of the ankle range used', 'angle'),
  lean_lifted: one('Model', 'Minimum lean on the heel lift', 'angle'),
  lean_error: one('Model', 'Error of the lean', 'angle'),
  from_build: one('Model', 'Lean from build', 'angle'),
  from_ankle: one('Model', 'Lean from ankle', 'angle'),
  lift_needed: one('Model', 'Heel lift needed', 'length'),
  limiter: one('Model', 'Depth limited by', 'text'),
  observed_lean: one('Observed squat', 'Observed lean', 'angle'),
  shin: one('Observed squat', 'Shin angle', 'angle', ['shin_angle']),
  repetition: one('Observed squat', 'Repetition', 'number'),
  bar_ahead: one('Observed squat', 'Bar ahead of mid-foot', 'length'),
  bar_height: one('Observed squat', 'Bar above the floor', 'length'),
  day: one('Training log', 'Session date', 'date', ['on_day', 'session_date', 'training_date', 'date']),
  exercise: one('Training log', 'Exercise', 'text'),
  load: one('Training log', 'Load', 'mass', ['weight_lifted']),
  reps: one('Training log', 'Repetitions per set', 'number', ['repetitions']),
  rpe: one('Training log', 'Set RPE', 'number'),
  session_rpe: one('Training log', 'Session RPE', 'number', ['srpe', 'exertion']),
  minutes: one('Training log', 'Session duration', 'duration', ['duration', 'session_duration']),
  session_load: one('Training log', 'Session load', 'number'),
};

const inWords: Readonly<Record<string, string>> = { _now: 'now', _after: 'after', _again: 'again' };

/** What a side picture is stored in: its points and what makes lengths and angles of them. */
const points: Readonly<Record<string, string>> = {
  toe: 'Toe',
  heel: 'Heel',
  ankle: 'Ankle joint',
  knee: 'Knee',
  hip: 'Hip',
  shoulder: 'Shoulder',
  bar: 'Bar',
  scale_1: 'Scale, first point',
  scale_2: 'Scale, second point',
  level_1: 'Level, first point',
  level_2: 'Level, second point',
};
const picture = (label: string, is: RoleSort): Role => one('Picture', label, is);

export const roles: ReadonlyMap<string, Role> = new Map<string, Role>([
  ...Object.entries(main),
  ...takenAgain.flatMap((name) =>
    laterEndings
      .filter((ending) => ending !== '')
      .map((ending): [string, Role] => [
        `${name}${ending}`,
        one('Measured again', `${main[name]!.label} ${inWords[ending]}`, main[name]!.is),
      ]),
  ),
  ...Object.entries(points).flatMap(([point, label]): [string, Role][] => [
    [`${point}_x`, picture(`${label} x`, 'number')],
    [`${point}_y`, picture(`${label} y`, 'number')],
  ]),
  ['picture', picture('Picture', 'text')],
  ['picture_sha256', picture('Fingerprint of the picture', 'text')],
  ['facing', picture('Facing', 'text')],
  ['level_line', picture('Level line', 'text')],
  ['frame_time', picture('Frame time', 'number')],
  ['known_length', picture('Known length', 'length')],
  ['camera_distance', picture('Camera distance', 'length')],
  ['length_nearer', picture('Known length nearer by', 'length')],
]);

/** What makes a column able to have a role. */
export interface Able {
  readonly kind: ColumnKind;
  readonly dimension?: Dimension | undefined;
}

/** True where a column of this kind and dimension can have the role: a column "lift" may be of texts. */
export function fitsRole({ kind, dimension }: Able, role: string): boolean {
  const is = roles.get(role)?.is;
  if (is === undefined) return false;
  if (is === 'who') return kind === 'text' || kind === 'choice' || (kind === 'number' && !dimension);
  if (is === 'text') return kind === 'text' || kind === 'choice';
  if (is === 'date') return kind === 'date';
  return kind === 'number' && (dimension === undefined || dimension === is);
}

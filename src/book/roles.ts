/**
 * What figure, handouts, report and checks look for in a sheet goes by usual names. A column or named cell that has one
 * keeps what it is, as its role, when it is given another name.
 */

import type { Dimension } from '../units/dimension.ts';
import { columnNamed } from './book.ts';
import type { Book, Column, NamedCell, Sheet } from './model.ts';
import { nameKey } from './names.ts';

type Sort = Dimension | 'number' | 'text' | 'date';

/** A sheet of later tests calls its columns like the roster, or says that they are the later ones. */
export const laterEndings = ['', '_now', '_after', '_again'] as const;

const ofColumns: Readonly<Record<string, Sort>> = {
  femur: 'length',
  tibia: 'length',
  trunk: 'length',
  foot: 'length',
  stature: 'length',
  ankle: 'angle',
  mass: 'mass',
  wall_left: 'length',
  wall_right: 'length',
  lift: 'length',
  bar: 'mass',
  stance: 'angle',
  depth: 'angle',
  placement: 'text',
  lean: 'angle',
  lean_used: 'angle',
  lean_lifted: 'angle',
  lift_needed: 'length',
  ankle_left: 'angle',
  ankle_right: 'angle',
  lean_error: 'angle',
  observed_lean: 'angle',
  shin: 'angle',
  from_ankle: 'angle',
  from_build: 'angle',
  limiter: 'text',
  tested: 'date',
  sex: 'text',
  group: 'text',
  team: 'text',
  squad: 'text',
  exercise: 'text',
};

/** Measures that a later test takes again. */
export const takenAgain = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'mass', 'stature'] as const;

const sorts: ReadonlyMap<string, Sort> = new Map([
  ...Object.entries(ofColumns),
  ...takenAgain.flatMap((name) =>
    laterEndings.map((ending) => [`${name}${ending}`, ofColumns[name]!] as const),
  ),
]);

/** What a side picture is stored in: its points and what makes lengths and angles of them. */
const ofPictures: ReadonlyMap<string, Sort> = new Map([
  ...[
    'toe',
    'heel',
    'ankle',
    'knee',
    'hip',
    'shoulder',
    'bar',
    'scale_1',
    'scale_2',
    'level_1',
    'level_2',
  ].flatMap((point) => [`${point}_x`, `${point}_y`].map((name) => [name, 'number'] as const)),
  ['picture', 'text'],
  ['picture_sha256', 'text'],
  ['facing', 'text'],
  ['level_line', 'text'],
  ['frame_time', 'number'],
  ['known_length', 'length'],
  ['camera_distance', 'length'],
  ['length_nearer', 'length'],
]);

const ofCells: ReadonlySet<string> = new Set([
  'target_lean',
  'max_lift',
  'tape_error',
  'ankle_error',
  'reference_ankle',
  'ankle_share',
  'wall_sem',
  'wall_sides',
  'foot',
  'lift',
  'placement',
  'stance',
  'mass',
  'bar',
  'stature',
  'depth',
]);

/** True where a column of this kind and dimension can be what the usual name says: a column "lift" may be of texts. */
function fits({ kind, dimension }: Column, role: string): boolean {
  const sort = sorts.get(role) ?? ofPictures.get(role);
  if (sort === undefined) return false;
  if (sort === 'text') return kind === 'text' || kind === 'choice';
  if (sort === 'date') return kind === 'date';
  return kind === 'number' && (dimension === undefined || dimension === sort);
}

/** The role that a column has from now on that is renamed; undefined where its new name says all. */
export function roleAfter(before: Column, after: Column): string | undefined {
  const key = nameKey(before.name);
  const role = before.role ?? (fits(before, key) ? key : undefined);
  return role === undefined || nameKey(after.name) === role || fits(after, nameKey(after.name))
    ? undefined
    : role;
}

/** The same for a named cell. */
export function cellRoleAfter({ name, role }: NamedCell, to: string): string | undefined {
  const was = role ?? (ofCells.has(nameKey(name)) ? nameKey(name) : undefined);
  return was === undefined || ofCells.has(nameKey(to)) ? undefined : was;
}

/** The column of a sheet that has a role, or its usual name. */
export const columnInRole = (sheet: Sheet, role: string): Column | undefined =>
  sheet.columns.find((column) => column.role === role) ?? columnNamed(sheet, role);

/** The named cell that has a role, or its usual name. */
export function cellInRole(book: Book, role: string): NamedCell | undefined {
  for (const named of book.names.values()) if (named.role === role) return named;
  return book.names.get(role);
}

/** What a column is, or what it is called. */
export const roleOf = ({ role, name }: Pick<Column, 'role' | 'name'>): string => role ?? nameKey(name);

/** The first sheet that has the lengths of lifters. */
export const measuredSheet = (sheets: readonly Sheet[]): Sheet | undefined =>
  sheets.find((sheet) => ['femur', 'tibia', 'trunk'].every((role) => columnInRole(sheet, role)));

/**
 * Which column of a sheet is what figure, handouts, checks, charts and pictures look for. A column says it as its role;
 * where none does, it is recognised by its name or label. Whoever renames a column that is recognised makes it say so.
 */

import type { Column, Sheet } from '../model.ts';
import { nameKey } from '../names.ts';
import { fitsRole, NO_ROLE, roles } from './list.ts';

type Named = Pick<Column, 'name' | 'label' | 'kind' | 'dimension' | 'role'>;
/** Of a sheet only its columns are looked at: the page knows no more of it. */
interface Columned<C extends Named = Column> {
  readonly columns: readonly C[];
}

const known = new WeakMap<readonly Named[], Map<string, Named | undefined>>();

/** The column of a sheet that has a role: the one that says so, else the one that is recognised by name or label. */
export function columnInRole<C extends Named>({ columns }: Columned<C>, role: string): C | undefined {
  const found = known.get(columns) ?? new Map<string, Named | undefined>();
  known.set(columns, found);
  if (!found.has(role)) found.set(role, search(columns, role));
  return found.get(role) as C | undefined;
}

function search(columns: readonly Named[], role: string): Named | undefined {
  const said = columns.find((column) => column.role === role);
  if (said) return said;
  const silent = columns.filter((column) => column.role === undefined);
  const named = silent.find(({ name }) => nameKey(name) === role);
  if (named) return named;
  return silent.find((column) => recognised(column) === role);
}

/** A label as names are written, without its unit: "Femur (cm)" is `femur`. */
const labelKey = (label: string): string =>
  nameKey(label.replace(/\([^)]*\)\s*$/, '').trim()).replace(/[^\p{L}\p{N}]+/gu, '_');

const byName: ReadonlyMap<string, readonly string[]> = (() => {
  const found = new Map<string, string[]>();
  const add = (name: string, role: string) => found.set(name, [...(found.get(name) ?? []), role]);
  for (const role of roles.keys()) add(role, role);
  for (const [role, { names = [] }] of roles) for (const name of names) add(name, role);
  return found;
})();

/** Numbers name nobody unless the column says so. */
const naming = (column: Omit<Named, 'role'>, role: string): boolean =>
  fitsRole(column, role) && !(roles.get(role)!.is === 'who' && column.kind === 'number');

/** The role that a column is recognised in by its name, its label or words in them; undefined for none. */
function recognised(column: Omit<Named, 'role'>): string | undefined {
  const { name, label } = column;
  for (const key of [nameKey(name), labelKey(label)]) {
    const role = byName.get(key)?.find((one) => naming(column, one));
    if (role !== undefined) return role;
  }
  for (const [role, { like }] of roles)
    if (like?.test(`${name} ${label}`) && naming(column, role)) return role;
  return undefined;
}

/** The role that a column of a sheet has: what it says, or what it is recognised in. A second one recognised has none. */
export function roleIn<C extends Named>(sheet: Columned<C>, column: C): string | undefined {
  if (column.role !== undefined) return column.role === NO_ROLE ? undefined : column.role;
  const key = nameKey(column.name);
  const role = roles.has(key) && naming(column, key) ? key : recognised(column);
  return role !== undefined && columnInRole(sheet, role) === column ? role : undefined;
}

/** What a column is, or what it is called. */
export const roleOf = (column: Named): string => column.role ?? recognised(column) ?? nameKey(column.name);

/** The role that a column says from now on that is renamed: the one that it has, unless its new name says another. */
export function roleAfter(sheet: Columned, before: Column, after: Named): string | undefined {
  if (before.role !== undefined) return before.role === nameKey(after.name) ? undefined : before.role;
  const role = roleIn(sheet, before);
  const now = recognised(after);
  return role === undefined || now === role || (now !== undefined && nameKey(after.name) === now)
    ? undefined
    : role;
}

/** The first sheet that has the lengths of lifters. */
export const measuredSheet = (sheets: readonly Sheet[]): Sheet | undefined =>
  sheets.find((sheet) => ['femur', 'tibia', 'trunk'].every((role) => columnInRole(sheet, role)));

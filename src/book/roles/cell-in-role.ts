/** Which named cell is what figure, handouts and checks look for: by its role, or its usual name. */

import type { Book, NamedCell } from '../model.ts';
import { nameKey } from '../names.ts';

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

/** The role that a named cell has from now on that is renamed; undefined where its new name says all. */
export function cellRoleAfter({ name, role }: NamedCell, to: string): string | undefined {
  const was = role ?? (ofCells.has(nameKey(name)) ? nameKey(name) : undefined);
  return was === undefined || ofCells.has(nameKey(to)) ? undefined : was;
}

/** The named cell that has a role, or its usual name. */
export function cellInRole(book: Book, role: string): NamedCell | undefined {
  for (const named of book.names.values()) if (named.role === role) return named;
  return book.names.get(role);
}

/** What a named cell is, or what it is called. */
export const cellRoleOf = ({ role, name }: Pick<NamedCell, 'role' | 'name'>): string => role ?? nameKey(name);

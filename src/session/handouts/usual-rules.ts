/** The rules that a book begins with, in the names of the sheet they are said of. */

import type { Book, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { roles } from '../../book/roles/list.ts';
import { renameNames } from '../../calc/index.ts';
import { usualRules } from './handout-rules.ts';
import { type HandoutRule, placePattern } from './handout-settings.ts';

/** A column or named cell that has another name than the usual one is called by it. */
export function usualRulesFor({ names }: Book, sheet: Sheet): readonly HandoutRule[] {
  const called = new Map<string, string>();
  for (const { role, name } of names.values()) if (role !== undefined) called.set(role, name);
  for (const role of roles.keys()) {
    const name = columnInRole(sheet, role)?.name;
    if (name !== undefined && nameKey(name) !== role) called.set(role, name);
  }
  if (called.size === 0) return usualRules;
  return usualRules.map((rule) => ({
    ...rule,
    when: renameNames(rule.when, called),
    say: rule.say.replace(placePattern, (place, inner: string) => {
      const name = called.get(nameKey(inner.trim()));
      return name === undefined ? place : `{${name}}`;
    }),
  }));
}

/** What the settings of handouts point at: a sheet, columns of it, and what rules and their sentences name. */

import { columnNamed, findSheet, sheetNamed } from '../../book/book.ts';
import { definePart } from '../../book/references/part.ts';
import { measuredSheet } from '../../book/roles/column-in-role.ts';
import { handoutSettings, placePattern, settingsKey } from './handout-settings.ts';

export const handoutPart = definePart({
  word: 'handout',
  part: 'handouts',
  key: settingsKey,
  schema: handoutSettings,
  references: (settings, { book, columns, sheets, names, formulas }) => {
    const { sheet: said, numbers, rules, tested } = settings;
    const home =
      said === undefined ? measuredSheet(book.sheets) : (findSheet(book, said) ?? sheetNamed(book, said));
    const named = (name: string): string =>
      home && columnNamed(home, name) ? columns.named(home.id, name) : names(name);
    return {
      ...settings,
      ...(said === undefined ? {} : { sheet: sheets.either(said) }),
      ...(numbers
        ? {
            numbers: numbers.map((line) => ({
              ...line,
              column: columns.named(home?.id, line.column),
              ...(line.error === undefined ? {} : { error: formulas(line.error, home?.id) }),
            })),
          }
        : {}),
      ...(rules
        ? {
            rules: rules.map((rule) => ({
              ...rule,
              when: formulas(rule.when, home?.id),
              say: rule.say.replace(placePattern, (place, inner: string) => {
                const name = inner.trim();
                const after = named(name);
                return after === name ? place : `{${after}}`;
              }),
            })),
          }
        : {}),
      ...(tested === undefined ? {} : { tested: columns.named(home?.id, tested) }),
    };
  },
});

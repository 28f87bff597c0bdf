/** What the report's settings point at: sheets by id or name, and columns of them by name. */

import { definePart } from '../../book/references/part.ts';
import { reportKey, reportSettings } from './report-settings.ts';

export const reportPart = definePart({
  word: 'report',
  part: 'handouts',
  key: reportKey,
  schema: reportSettings,
  references: (settings, { columns, sheets }) => ({
    ...settings,
    ...(settings.trials
      ? {
          trials: settings.trials.map((set) => ({
            ...set,
            sheet: sheets.either(set.sheet),
            columns: set.columns.map((name) => columns.named(set.sheet, name)),
          })),
        }
      : {}),
    ...(settings.groups
      ? {
          groups: settings.groups.map((set) => ({
            ...set,
            sheet: sheets.either(set.sheet),
            columns: set.columns.map((name) => columns.named(set.sheet, name)),
            ...(set.by === undefined ? {} : { by: columns.named(set.sheet, set.by) }),
          })),
        }
      : {}),
  }),
});

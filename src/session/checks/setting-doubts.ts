/** Settings that name an exercise that no row of the log has. */
import { type Asked, exerciseSettings, MOST_EXERCISES, stateOfSetting } from '../exercise-settings.ts';
import type { Doubt } from './doubt.ts';
import { keyOf } from './doubt-key.ts';

/** A setting that a formula compares with a column of exercises, where no row has what it says. */
export function settingDoubts(asked: Asked): readonly Doubt[] {
  return exerciseSettings(asked.book).flatMap((one) => {
    const { choices, text, sentence } = stateOfSetting(asked, one);
    const { setting, sheet, column } = one;
    if (sentence === undefined) return [];
    return [
      {
        place: { sheet: setting.sheet, column: setting.column, row: setting.row },
        about: 'setting' as const,
        sentence,
        remedy: 'Enter one of the exercises found; its results are blank until then.',
        choices: choices.slice(0, MOST_EXERCISES),
        key: keyOf('setting', sheet.id, column.id, text),
      },
    ];
  });
}

/** Sheets for a blank book: the columns that one of three common records needs, and formulas for what follows from them. */

import type { SheetOutline as Sheet } from '../../session/api.ts';
import type { Command } from '../../session/commands/index.ts';

type AddSheet = Extract<Command, { do: 'add-sheet' }>;
type Column = NonNullable<AddSheet['columns']>[number];

export type Ready = 'body lengths' | 'training log' | 'wall test';

const athlete: Column = { name: 'athlete', label: 'Athlete', kind: 'text', width: 150 };
const length = (name: string, label: string, note: string, more: Partial<Column> = {}): Column => ({
  name,
  label,
  kind: 'number',
  dimension: 'length',
  unit: 'cm',
  format: { digits: 1 },
  note,
  ...more,
});
const angle = (name: string, label: string, note: string, formula?: string): Column => ({
  name,
  label,
  kind: 'number',
  dimension: 'angle',
  unit: 'deg',
  format: { digits: 0 },
  note,
  ...(formula === undefined ? {} : { formula }),
});
const count = (name: string, label: string, note?: string, formula?: string): Column => ({
  name,
  label,
  kind: 'number',
  ...(note === undefined ? {} : { note }),
  ...(formula === undefined ? {} : { formula, format: { digits: 0 } }),
});
const mass = (name: string, label: string, note?: string, formula?: string): Column => ({
  name,
  label,
  kind: 'number',
  dimension: 'mass',
  unit: 'kg',
  format: { digits: 1 },
  ...(note === undefined ? {} : { note }),
  ...(formula === undefined ? {} : { formula }),
});

const WEIGHT_BEARING =
  'Weight-bearing: knee bent, heel down, tibia from the vertical. A range measured lying or sitting is 15–20° lower and must not be entered.';

/** A formula for the value of the same athlete on another sheet; blank where it has none. */
const ofAthlete = (sheet: Sheet, column: string): string => {
  const at = `INDEX(${sheet.name}.${column}, MATCH(athlete, ${sheet.name}.athlete, 0))`;
  return `IF(COUNTIFS(${sheet.name}.athlete, athlete, ${sheet.name}.${column}, "<>") = 0, "", ${at})`;
};

const has = (sheet: Sheet, ...names: readonly string[]): boolean =>
  names.every((name) => sheet.columns.some((column) => column.name === name));

/** Lengths of a body with the minimum lean; the ankle range comes from a wall test where the book has one. */
function bodyLengths(sheets: readonly Sheet[]): AddSheet {
  const wall = sheets.find((sheet) => has(sheet, 'athlete', 'ankle', 'wall_left'));
  return {
    do: 'add-sheet',
    label: 'Body lengths',
    columns: [
      athlete,
      angle(
        'lean',
        'Minimum lean (model)',
        'At parallel, with the bar over mid-foot and the whole ankle range used. A lifter who uses less of the range leans more.',
        'IF(COUNT(femur, tibia, trunk, ankle) < 4, "", LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, "high-bar", foot))',
      ),
      angle(
        'lean_error',
        '± error',
        'SD of the lean from measuring alone: 1 cm for each length and 2° for the ankle.',
        'IF(COUNT(femur, tibia, trunk, ankle) < 4, "", LEAN.ERROR(1, 2, femur, tibia, trunk, ankle, 0, "high-bar", foot))',
      ),
      length('stature', 'Stature', 'Floor to the top of the head, without shoes.'),
      length('femur', 'Femur', 'Greater trochanter to lateral femoral epicondyle.'),
      length('tibia', 'Tibia', 'Lateral femoral epicondyle to lateral malleolus.'),
      length('trunk', 'Trunk', 'Greater trochanter to acromion, standing.'),
      length('foot', 'Foot', 'Heel to longest toe.'),
      angle('ankle', 'Ankle range', WEIGHT_BEARING, wall && ofAthlete(wall, 'ankle')),
      mass('mass', 'Body mass'),
      {
        name: 'lengths_check',
        label: 'Lengths',
        kind: 'text',
        note: '“ok”, or what to check about the lengths.',
        formula: 'IF(COUNT(femur, tibia, trunk) < 3, "", SEG.CHECK(femur, tibia, trunk, stature))',
      },
    ],
  };
}

/** Sets of training, with what follows from each. */
function trainingLog(): AddSheet {
  return {
    do: 'add-sheet',
    label: 'Training log',
    columns: [
      athlete,
      { name: 'on_day', label: 'Day', kind: 'date' },
      { name: 'exercise', label: 'Exercise', kind: 'text', width: 120 },
      count('sets', 'Sets'),
      count('reps', 'Reps'),
      mass('load', 'Load'),
      count('rpe', 'RPE', 'Rating of the set: 10 means no repetitions in reserve, 9 one, 8 two.'),
      count('exertion', 'Session RPE', 'Perceived exertion of the whole session, 0 to 10.'),
      { name: 'minutes', label: 'Minutes', kind: 'number', dimension: 'duration', unit: 'min' },
      count(
        'volume',
        'Volume',
        'Sets × repetitions × load.',
        'IF(COUNT(sets, reps, load) < 3, "", TRAIN.VOLUME(sets, reps, load))',
      ),
      mass(
        'max_estimate',
        'Estimated 1RM',
        'From load, repetitions and the repetitions in reserve that the RPE gives; up to 10 repetitions.',
        'IF(COUNT(load, reps, rpe) < 3, "", IF(reps > 10, "", IFNA(STRENGTH.MAX(load, reps, "epley", STRENGTH.RIR(rpe)), "")))',
      ),
      count(
        'session_load',
        'Session load (RPE × min)',
        'Session RPE × minutes.',
        'IF(COUNT(exertion, minutes) < 2, "", TRAIN.SESSION(exertion, minutes))',
      ),
    ],
  };
}

/** Three knee-to-wall trials a side; lengths come from the sheet that has them, or are typed here. */
function wallTest(sheets: readonly Sheet[]): AddSheet {
  const lengths = sheets.find((sheet) => has(sheet, 'athlete', 'tibia', 'foot'));
  const trials = (side: string) =>
    [1, 2, 3].map((n) =>
      length(
        `${side}_${n}`,
        `${side === 'left' ? 'Left' : 'Right'}, trial ${n}`,
        'Longest toe to wall with the knee touching it and the heel down.',
      ),
    );
  const side = (name: string, words: string) => [
    length(`wall_${name}`, `Knee to wall, ${words}`, 'Mean of the trials.', {
      formula: `IF(COUNT(${name}_1, ${name}_2, ${name}_3) = 0, "", AVERAGE(${name}_1, ${name}_2, ${name}_3))`,
    }),
    angle(
      `ankle_${name}`,
      `Ankle range, ${words}`,
      'Weight-bearing dorsiflexion from knee-to-wall.',
      `IF(COUNT(wall_${name}, tibia, foot) < 3, "", ANKLE.FROM.WALL(wall_${name}, tibia, foot))`,
    ),
  ];
  const from = (column: string) => (lengths ? { formula: ofAthlete(lengths, column) } : {});
  return {
    do: 'add-sheet',
    label: 'Wall test',
    columns: [
      athlete,
      { name: 'tested', label: 'Tested', kind: 'date' },
      ...trials('left'),
      ...trials('right'),
      length('tibia', 'Tibia', 'Lateral femoral epicondyle to lateral malleolus.', from('tibia')),
      length('foot', 'Foot', 'Heel to longest toe.', from('foot')),
      ...side('left', 'left'),
      ...side('right', 'right'),
      angle(
        'ankle',
        'Ankle range used',
        'The smaller of the two sides: the stiffer ankle limits the squat.',
        'IF(COUNT(ankle_left, ankle_right) < 2, "", MIN(ankle_left, ankle_right))',
      ),
    ],
  };
}

/** The sheet to add, made for what the book has already. */
export const readySheet = (which: Ready, sheets: readonly Sheet[]): AddSheet =>
  which === 'body lengths'
    ? bodyLengths(sheets)
    : which === 'training log'
      ? trainingLog()
      : wallTest(sheets);

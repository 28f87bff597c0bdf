/** A gym's own table of what raises the heel: a plate, a wedge, a shoe, a shoe on a wedge, each as one heel lift. */

import type { Command } from './commands/index.ts';
import type { SheetOutline } from './sheet/sheet-answers.ts';

/** Name of the table's sheet. */
const NAME = 'devices';

const length = (name: string, label: string, note: string) => ({
  name,
  label,
  kind: 'number' as const,
  dimension: 'length' as const,
  unit: 'cm',
  format: { digits: 1 },
  note,
});

/** Adds the table with a row for each sort of device; everything in it is the gym's to measure. */
export function devicesSheet(sheets: readonly SheetOutline[]): Extract<Command, { do: 'add-sheet' }> {
  const taken = sheets.some(({ name }) => name.toLowerCase() === NAME);
  return {
    do: 'add-sheet',
    ...(taken ? {} : { name: NAME }),
    label: 'Heel devices',
    purpose: 'gathered',
    note: 'One row per plate, wedge, shoe, or shoe on a wedge. A device must be firm, non-slip and support the whole heel. Change one thing at a time and stop if the knee hurts.',
    rows: 6,
    columns: [
      { name: 'device', label: 'Device', kind: 'text', width: 180 },
      {
        name: 'device_kind',
        label: 'Kind',
        kind: 'choice',
        choices: ['plate', 'wedge', 'shoe', 'shoe on a wedge'],
        width: 130,
      },
      length('heel_stack', 'Under the heel', 'Plate: its thickness. Shoe: sole under the heel.'),
      length('ball_stack', 'Under the ball of the foot', 'Shoe: sole under the ball. Plate: blank.'),
      length('rise', 'Rise of the wedge', 'How much higher its high edge is.'),
      length('wedge_length', 'Length of the wedge', 'Along its slope, not along the floor.'),
      length('foot', 'For a foot of', 'Heel to longest toe of the lifter who uses it.'),
      {
        name: 'drop',
        label: 'Heel above ball',
        kind: 'number',
        dimension: 'length',
        unit: 'cm',
        format: { digits: 1 },
        formula: 'IF(ISNUMBER(heel_stack), LIFT.NET(heel_stack, IF(ISNUMBER(ball_stack), ball_stack, 0)), 0)',
      },
      {
        name: 'angle',
        label: 'Angle of the wedge',
        kind: 'number',
        dimension: 'angle',
        unit: 'deg',
        format: { digits: 1 },
        formula: 'IF(COUNT(rise, wedge_length) = 2, LIFT.BOARD(rise, wedge_length), 0)',
      },
      {
        name: 'height',
        label: 'Heel lift',
        kind: 'number',
        dimension: 'length',
        unit: 'cm',
        format: { digits: 1 },
        formula: 'IF(AND(ISNUMBER(foot), COUNT(heel_stack, rise) > 0), LIFT.STACK(drop, foot, angle), "")',
        note: 'The device as one heel lift for this foot; goes into the figure and into the roster’s heel lift.',
      },
      {
        name: 'pitch',
        label: 'Pitch of the foot',
        kind: 'number',
        dimension: 'angle',
        unit: 'deg',
        format: { digits: 1 },
        formula: 'IF(ISNUMBER(height), LIFT.PITCH(height, foot), "")',
      },
    ],
  } as Extract<Command, { do: 'add-sheet' }>;
}

import type { Command } from '../../session/commands/index.ts';
import { runAll } from '../state/actions.ts';
import type { Page } from '../state/page.ts';

export interface Template {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly commands: readonly Command[];
}

const length = (label: string, note: string) => ({
  label,
  kind: 'number' as const,
  dimension: 'length' as const,
  unit: 'cm',
  format: { digits: 1 },
  note,
});
const angle = { kind: 'number' as const, dimension: 'angle' as const, unit: 'deg', format: { digits: 0 } };

const blank: Template = {
  id: 'blank',
  title: 'Blank book',
  about: 'One empty sheet.',
  commands: [
    { do: 'set-title', title: 'New book' },
    {
      do: 'add-sheet',
      name: 'roster',
      label: 'Roster',
      purpose: 'gathered',
      columns: [{ label: 'Athlete', kind: 'text', width: 160 }],
    },
  ],
};

/** Books to begin with: columns and formulas stand, the measures are one's own. */
export const templates: readonly Template[] = [
  {
    id: 'screening',
    title: 'Screening of a group',
    about: 'Lengths and knee-to-wall per athlete; ankle range and lean at parallel are computed.',
    commands: [
      { do: 'set-title', title: 'Screening' },
      {
        do: 'add-sheet',
        name: 'roster',
        label: 'Roster',
        purpose: 'gathered',
        columns: [
          { label: 'Athlete', kind: 'text', width: 160 },
          { label: 'Tested', kind: 'date' },
          length('Femur', 'Greater trochanter (hip joint) to lateral femoral epicondyle (knee).'),
          length('Tibia', 'Lateral femoral epicondyle (knee) to lateral malleolus (ankle joint).'),
          length('Trunk', 'Greater trochanter (hip joint) to acromion (shoulder).'),
          length('Foot', 'Heel to longest toe.'),
          { ...length('Knee to wall', 'Longest toe to wall, knee touching it, heel down.'), name: 'wall' },
          {
            ...angle,
            label: 'Ankle range',
            name: 'ankle',
            formula: 'ANKLE.FROM.WALL(wall, tibia, foot)',
          },
          {
            ...angle,
            label: 'Lean at parallel',
            name: 'lean',
            formula: 'LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, "high-bar", foot)',
          },
        ],
      },
    ],
  },
  {
    id: 'log',
    title: 'Training log',
    about: 'One line a session: exertion, minutes and load; the load of the last 7 days beside it.',
    commands: [
      { do: 'set-title', title: 'Training log' },
      {
        do: 'add-sheet',
        name: 'sessions',
        label: 'Sessions',
        purpose: 'gathered',
        columns: [
          { label: 'Athlete', kind: 'text', width: 160 },
          { label: 'Day', kind: 'date', name: 'on_day' },
          {
            label: 'Exertion',
            kind: 'number',
            name: 'exertion',
            note: 'Session rating of perceived exertion, 0 to 10.',
          },
          { label: 'Minutes', kind: 'number', name: 'time_spent', dimension: 'duration', unit: 'min' },
          {
            label: 'Load',
            kind: 'number',
            name: 'session_load',
            formula: 'TRAIN.SESSION(exertion, time_spent)',
          },
          {
            label: 'Last 7 days',
            kind: 'number',
            name: 'week_load',
            formula:
              'TRAIN.SUM(sessions.on_day, sessions.session_load, on_day, 7, sessions.athlete, athlete)',
          },
        ],
      },
    ],
  },
];

/** Fills the new book that is open. */
export async function openTemplate(page: Page, id: string): Promise<boolean> {
  const template = [blank, ...templates].find((one) => one.id === id);
  return template ? runAll(page, `Begin with ${template.title.toLowerCase()}`, template.commands) : false;
}

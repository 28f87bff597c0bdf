/** The guide for a lifter with a log, step by step. */
import { leanCautions, loadCaution, safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const lifter: Guide = {
  id: 'lifter',
  title: 'For the lifter',
  lead: 'See what two years of training have done, measure your own build with a tape, and find the heel height that suits it.',
  book: 'two-years-of-squats',
  files: {
    'training-export.csv': 'two years of one lifter’s log, in pounds, as exported from an app',
  },
  parts: [
    {
      title: 'Import the log',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Templates* press *My training and my build*.',
          sees: 'A book opens with its sheets, formulas and charts, ready for your numbers.',
          show: { template: 'two-years-of-squats' },
        },
        {
          id: 'export',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `training-export.csv`. Press *Add 687 rows*, then *Done*.',
          sees: 'Month-first dates are recognised, and pounds become kilograms. Two cells are unreadable: their text stays as it was.',
          show: { file: 'training-export.csv', into: 'training' },
          picture: 'Importing the log: pounds are recognised; two cells are unreadable, with the reason.',
        },
        {
          id: 'mend',
          text: 'Press *Checks* on the right. Press *Training, Load, row 34*, type `45 lb` and press Enter. Press *Training, RPE, row 121*, type `7.5` and press Enter.',
          sees: 'You can type a unit after any number. The empty bar is saved as 20.4 kg.',
          show: { side: 'doubts' },
        },
      ],
    },
    {
      title: 'What the training says',
      steps: [
        {
          id: 'glance',
          text: 'Press *At a glance* on the left.',
          sees: 'Sessions, the best estimated 1RM overall and in the last eight weeks, and the change per week. Press a value, then *Working* on the right, to see how it was calculated.',
          show: { sheet: 'glance', column: 'figure' },
        },
        {
          id: 'maximum',
          text: 'Under *Charts* press *Estimated 1RM over time*.',
          sees: 'Each point is a top set of the main lift with a rating of 7 or more. Days without a log stay empty.',
          show: { chart: 'chart_1' },
          picture: 'Estimated 1RM over two years, set by set, with gaps where nothing was logged.',
        },
        {
          id: 'best',
          text: 'Press *Best sets* on the left.',
          sees: 'The heaviest set for each number of repetitions, the date it was first done, and the heaviest in the last 12 weeks.',
          show: { sheet: 'best', column: 'heaviest' },
        },
        {
          id: 'weeks',
          text: 'Press *Weeks* on the left; then, under *Charts*, *Session load by week*.',
          sees: 'Sessions, sets, volume, load (session RPE × minutes) and monotony, one row per week.',
          show: { sheet: 'weeks', column: 'week_volume' },
          picture: 'The weeks: sessions, sets, volume, load, monotony and the best estimated 1RM of each.',
        },
      ],
    },
    {
      title: 'My build, and the heel height that suits it',
      steps: [
        {
          id: 'measure',
          text: 'Stand barefoot and have somebody measure the heights from the floor; press a heading of *My measures* to read where. For knee to wall, move the foot back until the knee just touches the wall with the heel down. In *My measures* type a row, with Tab from cell to cell: `Two years on`, `2025-09-27`, `130.5`, `86`, `47`, `6.5`, `24.5`, `9`, `9`, `68.5`.',
          sees: 'Femur, tibia, trunk and ankle range are calculated, and *Lengths* says whether they are plausible for one person.',
          show: { sheet: 'measures', column: 'occasion' },
        },
        {
          id: 'heels',
          text: 'Press *Available heel lifts* on the left. Under the 0 of the column *Height* type the heel heights that you have or could get: `0.6`, `1.3`, `1.9`, `2.5`, `3`.',
          show: { sheet: 'heights', column: 'height', row: 2 },
        },
        {
          id: 'lean',
          text: 'Press *My measures* and read *Minimum lean (model)*, its *± error*, *Lean from build*, *Lean from ankle*. Under *Settings* type `32` beside *Target lean*, press Enter, and read *Heel lift used*.',
          sees: 'The lean from build is yours, not a fault. The lean from ankle can be reduced by training or by a heel lift. *Settings* explains how to choose a target of your own.',
          show: { sheet: 'measures', column: 'lean' },
        },
        {
          id: 'figure',
          text: 'Press *Figure* on the right. Type `1.9` beside *Heel lift, cm* and press Enter.',
          sees: 'This changes only the figure: *Save this heel lift* would save it in the row, *Reset to this row* discards it.',
          show: { side: 'figure' },
          picture: 'The lifter’s own figure with another heel height, and the numbers beside it.',
        },
        {
          id: 'page',
          text: 'Press *Reset to this row*. Open the menu *Book* and press *Make a handout for this athlete*: your page, ready to print. Press *Close*.',
          show: { command: 'handout-row' },
        },
        {
          id: 'save',
          text: 'Press *Save* at the top.',
          sees: 'The book is also saved in this browser automatically. Next time, import the new export: only its new rows are added.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [
    ...leanCautions,
    'Estimated 1RMs come from published equations for groups and are best up to 10 repetitions: not a reason to try a maximal single alone.',
    loadCaution,
    ...safetyCautions,
  ],
};

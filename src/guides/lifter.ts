import { leanCautions, loadCaution, safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const lifter: Guide = {
  id: 'lifter',
  title: 'For the lifter',
  lead: 'See what two years of training have come to, measure your own build with a tape, and find the heel that suits it.',
  book: 'two-years-of-squats',
  files: {
    'training-export.csv': 'two years of one lifter’s log, in pounds, as an app exports it',
  },
  parts: [
    {
      title: 'Bring the log in',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Open or begin* press *My training and my build*.',
          sees: 'A book opens with its sheets, formulas and charts, and without any numbers of yours.',
          show: { template: 'two-years-of-squats' },
        },
        {
          id: 'export',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `training-export.csv`. Press *Add 687 rows*, then *Done*.',
          sees: 'The dates have the month first, and pounds become kilograms. Two cells are unreadable and stay as they came.',
          show: { file: 'training-export.csv', into: 'training' },
          picture: 'Bringing in the log: pounds are recognised, two cells are unreadable, with the reason.',
        },
        {
          id: 'mend',
          text: 'Press *Checks* on the right. Press *Training, Load, row 34*, type `45 lb` and press Enter. Press *Training, RPE, row 121*, type `7.5` and press Enter.',
          sees: 'A unit can be typed behind any number. The empty bar stands as 20.4 kg.',
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
          sees: 'Sessions, the best estimated maximum, that of the last eight weeks, and the change a week. Press a value and *Working* on the right to see how it came about.',
          show: { sheet: 'glance', column: 'figure' },
        },
        {
          id: 'maximum',
          text: 'Under *Charts* press *Estimated 1RM over time*.',
          sees: 'Each point is a top set of the main lift with a rating of 7 or more. Nothing stands where nothing was logged.',
          show: { chart: 'chart_1' },
          picture: 'The estimated maximum over two years, set by set, with gaps where nothing was logged.',
        },
        {
          id: 'best',
          text: 'Press *Best sets* on the left.',
          sees: 'The heaviest set for each number of repetitions, when it was first done, and that of the last 12 weeks.',
          show: { sheet: 'best', column: 'heaviest' },
        },
        {
          id: 'weeks',
          text: 'Press *Weeks* on the left; then, under *Charts*, *Session load by week*.',
          sees: 'Sessions, sets, volume, load (session rating × minutes) and monotony, a row a week.',
          show: { sheet: 'weeks', column: 'week_volume' },
          picture:
            'The weeks: sessions, sets, volume, load, monotony and the best estimated maximum of each.',
        },
      ],
    },
    {
      title: 'My build, and the heel that suits it',
      steps: [
        {
          id: 'measure',
          text: 'Stand barefoot and have somebody measure the heights from the floor; press a heading of *My measures* to read where. For knee to wall, move the foot back until the knee just touches the wall with the heel down. In *My measures* type a row, with Tab from cell to cell: `Two years on`, `2025-09-27`, `130.5`, `86`, `47`, `6.5`, `24.5`, `9`, `9`, `68.5`.',
          sees: 'Femur, tibia, trunk and ankle range are worked out, and *Lengths* says whether they belong to one body.',
          show: { sheet: 'measures', column: 'occasion' },
        },
        {
          id: 'heels',
          text: 'Press *Available heel lifts* on the left. Under the 0 of the column *Height* type the heels that you have or could get: `0.6`, `1.3`, `1.9`, `2.5`, `3`.',
          show: { sheet: 'heights', column: 'height', row: 2 },
        },
        {
          id: 'lean',
          text: 'Press *My measures* and read *Minimum lean (model)*, its *± error*, *Lean from build*, *Lean from ankle*. Under *Settings* type `32` beside *Target lean*, press Enter, and read *Heel lift used*.',
          sees: 'The lean from build is yours, and no fault. The lean from ankle can be trained, or lent by a heel. *Settings* explains how to choose a target of your own.',
          show: { sheet: 'measures', column: 'lean' },
        },
        {
          id: 'figure',
          text: 'Press *Figure* on the right. Type `1.9` beside *Heel lift, cm* and press Enter.',
          sees: 'That is a try-out: *Save this heel lift* would write it down, *Reset to this row* forgets it.',
          show: { side: 'figure' },
          picture: 'The lifter’s own figure with another heel tried out, and the numbers beside it.',
        },
        {
          id: 'page',
          text: 'Press *Reset to this row*. Open the menu *Book* and press *Handout for this athlete*: your page, to print. Press *Close*.',
          show: { command: 'handout-row' },
        },
        {
          id: 'save',
          text: 'Press *Save* at the top.',
          sees: 'The browser keeps the book too, by itself. The next export is recognised, and only its new rows come in.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [
    ...leanCautions,
    'Estimated maxima come from published equations for groups and are best up to 10 repetitions: no reason to try a single alone.',
    loadCaution,
    ...safetyCautions,
  ],
};

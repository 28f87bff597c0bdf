import { leanCautions, loadCaution, safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const coach: Guide = {
  id: 'coach',
  title: 'For the coach',
  lead: 'Screen a group, give each lifter a page, test again after eight weeks and see who really changed, then follow the training week by week.',
  book: 'squat-screening',
  files: {
    'roster.csv': '24 lifters with lengths and knee-to-wall, as a tablet exports them',
    'retest.csv': 'the same test eight weeks later',
    'training-log.csv': '450 sessions of those weeks',
    'observed-squats.csv':
      '41 digitised frames of ten lifters, drawn from the model: no picture of anybody exists',
  },
  parts: [
    {
      title: 'Screen the group',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Open or begin* press *Screening, retest and monitoring*.',
          sees: 'A book opens with its sheets, formulas and charts, and without people.',
          show: { template: 'squat-screening' },
        },
        {
          id: 'roster',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `roster.csv`. Read what was found, then press *Add 24 rows* and *Done*.',
          sees: 'The title line, the line of units and the letters F and M are understood. Two cells are unreadable: they stay as they came.',
          show: { file: 'roster.csv', into: 'roster' },
          picture:
            'Bringing in the roster: each column of the file with where it goes, how it is read and what says so.',
        },
        {
          id: 'mend',
          text: 'Press *Checks* on the right. Press *Roster, Body mass, row 8*, type `56.2` and press Enter. Press *Roster, Knee to wall, right, row 19*, type what the tape says, `6.5`, and press Enter.',
          sees: 'One cell had a comma for a point, the other the word “stiff” where a length was wanted.',
          show: { side: 'doubts' },
        },
        {
          id: 'heights',
          text: 'Press *Available heel lifts* on the left. Under the 0 of the column *Height* type the heel heights that you can hand out, one under the other: `0.6`, `1.3`, `1.9`, `2.5`, `3`.',
          show: { sheet: 'heights', column: 'height', row: 2 },
        },
        {
          id: 'lean',
          text: 'Press *Roster* on the left and look along the row of Una Bellamy: *Minimum lean (model)*, its *± error*, the *Lean from build* and the *Lean from ankle*. Press the cell under *Minimum lean (model)*, then *Working* on the right.',
          sees: 'By the model her minimum lean is 40°, and nearly all that is above an average lifter comes from the ankles. Working shows each step of the number with its sources.',
          show: { sheet: 'roster', column: 'lean', row: 20 },
        },
        {
          id: 'lift',
          text: 'Under *Settings* on the left, type `32` beside *Target lean* and press Enter. The sheet *Settings* explains how to choose a target: there is no published one. Read *Heel lift needed*, *Heel lift used* and *Available heel lift*.',
          sees: 'A heel lift is suggested only where the lean is above the target by more than its error. Else the row says *none needed*; a height that misses the target by less than the error says so.',
          show: { name: 'target_lean' },
        },
        {
          id: 'figure',
          text: 'Press any cell of Una Bellamy, then *Figure* on the right.',
          sees: 'She stands to scale, flat and on the lift that was picked. The sliders below try things out and change nothing.',
          show: { side: 'figure' },
          picture: 'The roster with the figure of the chosen lifter beside it, flat and lifted.',
        },
        {
          id: 'group',
          text: 'On the left, under *Charts*, press *Lean and ankle range*. Then press *Summary*.',
          sees: 'Stiff ankles go with lean. The summary counts who is above the target, flat and lifted.',
          show: { chart: 'chart_1' },
        },
        {
          id: 'contact',
          text: 'Open the menu *Book* and press *Edit handout text…*. Write under *Contact* whom lifters can turn to, `Your coach, Tuesdays at the rack`, and press *Keep*.',
          sees: 'Each sentence of a handout stands there with the formula that decides whether it is said. Change them as you like.',
          show: { command: 'handout-rules' },
        },
        {
          id: 'handouts',
          text: 'Open the menu *Book* and press *Make handouts for all athletes*. Look through the pages; *Print or save as PDF* prints them. Press *Close*.',
          show: { command: 'handouts-all' },
          picture:
            'The handout of one lifter: flat and lifted, numbers with their error, findings, what to try.',
        },
      ],
    },
    {
      title: 'Eight weeks later: who really changed',
      steps: [
        {
          id: 'retest',
          text: 'Press *Retest* on the left. Bring in `retest.csv` as before. The file writes one name otherwise: press *It is Carla Nisse*. Then press *Add 23 rows* and *Done*.',
          sees: 'Nobody is taken for somebody else without being asked. One lifter was away.',
          show: { file: 'retest.csv', into: 'retest' },
        },
        {
          id: 'ill',
          text: 'In the row of Wanda Eriks, choose the two cells that say “ill” and press Delete.',
          sees: 'No test is a blank, not a word.',
          show: { sheet: 'retest', column: 'wall_left', row: 21 },
        },
        {
          id: 'changed',
          text: 'Read *Left: real change?* and *Right: real change?*, then press *Summary* and read *MDC 95 %*.',
          sees: 'A change is real where it is more than the test’s own error. The error comes from `wall_sem`: .69 cm for one trial a side on two occasions (Powden et al. 2015, Man Ther 20:524–532). Put in that of your own tester where you know it.',
          show: { sheet: 'retest', column: 'left_verdict' },
        },
        {
          id: 'pairs',
          text: 'Under *Charts* press *Knee to wall, left: before and after*.',
          sees: 'Lines inside the band may be nothing but measuring.',
          show: { chart: 'chart_3' },
          picture: 'Before and after, with the band in which a change may be measuring error.',
        },
      ],
    },
    {
      title: 'Why this lifter leans',
      steps: [
        {
          id: 'observed',
          text: 'Press *Observed squats* on the left and import `observed-squats.csv` as before: *Add 41 rows*, then *Done*.',
          sees: 'Each row has the points of one side picture or frame. Observed lean, shin angle and depth follow from them, with lengths and ankle range from the roster.',
          show: { file: 'observed-squats.csv', into: 'observed' },
        },
        {
          id: 'explained',
          text: 'Press a cell of Una Bellamy, then *Figure* on the right. Read *Where the observed lean comes from*.',
          sees: 'The bars add up to her observed lean: an average build, her ankles, and ankle range that she does not use. What is smaller than its error says so.',
          show: { side: 'figure' },
        },
        {
          id: 'heel-or-ankle',
          text: 'In the figure open *Heel lift, or more ankle range?*.',
          sees: 'One row per step of ankle range: the minimum lean, the heel lift still needed, depth and loads. Beside it is what stretching gained in studies.',
          show: { side: 'figure' },
        },
        {
          id: 'team',
          text: 'Under *Charts* press *Where observed leans come from*, then *Observed leans, before and after*.',
          sees: 'One bar per lifter, high to low. Below it the chart says what changed by more than its error; it does not say why.',
          show: { chart: 'chart_6' },
        },
        {
          id: 'own-picture',
          text: 'Press *Observed squats* on the left, then *Picture* on the right. To digitise a squat of your own, press *Open a picture or film…* there.',
          sees: 'Pictures stay on this device. The book stores the points, never the picture.',
          show: { side: 'picture' },
        },
      ],
    },
    {
      title: 'The weeks between: monitoring',
      steps: [
        {
          id: 'log',
          text: 'Press *Training log* on the left and bring in `training-log.csv`. Press *It is Kaia Lindqvist*, then *Add 450 rows* and *Done*.',
          sees: 'Semicolons, decimal commas and dates with the day first are read as they are meant.',
          show: { file: 'training-log.csv', into: 'sessions' },
        },
        {
          id: 'half',
          text: 'One session lasted “half”. Press *Checks*, press *Training log, Minutes, row 41*, and press Delete.',
          show: { side: 'doubts' },
        },
        {
          id: 'monitoring',
          text: 'Press *Monitoring* on the left.',
          sees: 'One row a lifter for the week that closes on `week_end`: load, monotony and strain, the best estimated maximum of eight weeks and its trend a week.',
          show: { sheet: 'monitoring', column: 'week_load' },
          picture: 'The monitoring sheet: one row a lifter for the chosen week.',
        },
        {
          id: 'week',
          text: 'Under *Settings* type `2025-10-26` beside *Week ending* and press Enter: the week in which the hall was closed. Then *Undo*.',
          show: { name: 'week_end' },
        },
        {
          id: 'trends',
          text: 'Under *Charts* press *Estimated 1RM over time*, then *Session load by week*.',
          sees: 'Gaps stay gaps: nothing is drawn where nothing was logged.',
          show: { chart: 'chart_5' },
        },
        {
          id: 'save',
          text: 'Press *Save* at the top and keep the file where health data may be kept.',
          sees: 'The browser keeps the book too, by itself; next week’s log is recognised and only its new rows come in.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [...leanCautions, loadCaution, ...safetyCautions],
};

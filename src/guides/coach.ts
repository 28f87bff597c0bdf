/** The guide for coaches of a squad, step by step. */
import { leanCautions, loadCaution, safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const coach: Guide = {
  id: 'coach',
  title: 'For the coach',
  lead: 'Screen a group, print a page for each lifter, retest after eight weeks to see who really changed, and follow the training week by week.',
  book: 'squat-screening',
  files: {
    'roster.csv': '24 lifters with lengths and knee-to-wall, as exported from a tablet',
    'retest.csv': 'the same test eight weeks later',
    'training-log.csv': '450 training sessions from those weeks',
    'observed-squats.csv':
      '41 digitised frames of ten lifters, drawn from the model: no picture of anybody exists',
  },
  parts: [
    {
      title: 'Screen the group',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Templates* press *Screening, retest and monitoring*.',
          sees: 'A book opens with its sheets, formulas and charts, but without people.',
          show: { template: 'squat-screening' },
        },
        {
          id: 'roster',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `roster.csv`. Read the findings, then press *Add 24 rows* and *Done*.',
          sees: 'The title line, the units line and the letters F and M are recognised. Two cells are unreadable: their text stays as it was.',
          show: { file: 'roster.csv', into: 'roster' },
          picture:
            'Importing the roster: each column of the file, where it goes, how it is read, and the evidence.',
        },
        {
          id: 'mend',
          text: 'Press *Checks* on the right. Press *Roster, Body mass, row 8*, type `56.2` and press Enter. Press *Roster, Knee to wall, right, row 19*, type the value from the tape, `6.5`, and press Enter.',
          sees: 'One cell had a comma in place of a decimal point, the other the word “stiff” in place of a length.',
          show: { side: 'doubts' },
        },
        {
          id: 'heights',
          text: 'Press *Available heel lifts* on the left. Under the 0 of the column *Height* type your heel heights, one per row: `0.6`, `1.3`, `1.9`, `2.5`, `3`.',
          show: { sheet: 'heights', column: 'height', row: 2 },
        },
        {
          id: 'lean',
          text: 'Press *Roster* on the left and look along the row of Una Bellamy: *Minimum lean (model)*, its *± error*, the *Lean from build* and the *Lean from ankle*. Press the cell under *Minimum lean (model)*, then *Working* on the right.',
          sees: 'By the model her minimum lean is 40°. Nearly all of the lean beyond an average lifter’s comes from her ankles. *Working* shows each step of the calculation with its sources.',
          show: { sheet: 'roster', column: 'lean', row: 20 },
        },
        {
          id: 'lift',
          text: 'Under *Settings* on the left, type `32` beside *Target lean* and press Enter. The sheet *Settings* explains how to choose a target: there is no published one. Read *Heel lift needed*, *Heel lift used* and *Available heel lift*.',
          sees: 'A heel lift is suggested only where the lean is above the target by more than its error; other rows say *none needed*. A height that misses the target by less than the error is marked *within error*.',
          show: { name: 'target_lean' },
        },
        {
          id: 'figure',
          text: 'Press any cell of Una Bellamy, then *Figure* on the right.',
          sees: 'The figure is to scale, flat and with the heel lift used. The sliders below try changes without changing the data.',
          show: { side: 'figure' },
          picture: 'The roster with the figure of the selected lifter beside it, flat and with a heel lift.',
        },
        {
          id: 'group',
          text: 'On the left, under *Charts*, press *Lean and ankle range*. Then press *Summary*.',
          sees: 'Stiff ankles go with more lean. The summary counts the lifters above the target, flat and with a heel lift.',
          show: { chart: 'chart_1' },
        },
        {
          id: 'contact',
          text: 'Open the menu *Book* and press *Edit handout text…*. Under *Contact* type `Your coach, Tuesdays at the rack`, and press *Save*.',
          sees: 'Each sentence of the handout is listed with its formula and appears when the formula is true. Edit them as you like.',
          show: { command: 'handout-rules' },
        },
        {
          id: 'handouts',
          text: 'Open the menu *Book* and press *Make handouts for all athletes*. Look through the pages; *Print or save as PDF* prints them. Press *Close*.',
          show: { command: 'handouts-all' },
          picture:
            'The handout of one lifter: flat and with a heel lift, numbers with their error, findings, suggestions.',
        },
      ],
    },
    {
      title: 'Eight weeks later: who really changed',
      steps: [
        {
          id: 'retest',
          text: 'Press *Retest* on the left. Import `retest.csv` as before. One name is spelled differently in the file: press *Same as Carla Nisse*. Then press *Add 23 rows* and *Done*.',
          sees: 'Similar names are matched only after you confirm. One lifter was away.',
          show: { file: 'retest.csv', into: 'retest' },
        },
        {
          id: 'ill',
          text: 'In the row of Wanda Eriks, select the two cells that say “ill” and press Delete.',
          sees: 'Leave a test that was not done blank.',
          show: { sheet: 'retest', column: 'wall_left', row: 21 },
        },
        {
          id: 'changed',
          text: 'Read *Left: real change?* and *Right: real change?*, then press *Summary* and read *MDC 95 %*.',
          sees: 'A change is real when it is larger than the error of the test. The error comes from `wall_sem`: .69 cm for one trial per side on two occasions (Powden et al. 2015, Man Ther 20:524–532). Enter your own tester’s error if you know it.',
          show: { sheet: 'retest', column: 'left_verdict' },
        },
        {
          id: 'pairs',
          text: 'Under *Charts* press *Knee to wall, left: before and after*.',
          sees: 'A change inside the band may be measuring error only.',
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
          sees: 'Pictures stay on this device. The book stores the points, and a small copy only if you ask for it.',
          show: { side: 'picture' },
        },
      ],
    },
    {
      title: 'The weeks between: monitoring',
      steps: [
        {
          id: 'log',
          text: 'Press *Training log* on the left and import `training-log.csv`. Press *Same as Kaia Lindqvist*, then *Add 450 rows* and *Done*.',
          sees: 'Semicolons, decimal commas and day-first dates are recognised.',
          show: { file: 'training-log.csv', into: 'sessions' },
        },
        {
          id: 'half',
          text: 'One session has “half” for its minutes. Press *Checks*, press *Training log, Minutes, row 41*, and press Delete.',
          show: { side: 'doubts' },
        },
        {
          id: 'monitoring',
          text: 'Press *Monitoring* on the left.',
          sees: 'One row per lifter for the week ending on `week_end`: load, monotony and strain, the best estimated 1RM of eight weeks and the 1RM trend per week.',
          show: { sheet: 'monitoring', column: 'week_load' },
          picture: 'The monitoring sheet: one row per lifter for the selected week.',
        },
        {
          id: 'week',
          text: 'Under *Settings* type `2025-10-26` beside *Week ending* and press Enter: the week in which the gym was closed. Then *Undo*.',
          show: { name: 'week_end' },
        },
        {
          id: 'trends',
          text: 'Under *Charts* press *Estimated 1RM over time*, then *Session load by week*.',
          sees: 'Gaps stay gaps: nothing is drawn for days without a log.',
          show: { chart: 'chart_5' },
        },
        {
          id: 'save',
          text: 'Press *Save* at the top and store the file where health data may be stored.',
          sees: 'The book is also saved in this browser automatically. Next week, import the new export: only its new rows are added.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [...leanCautions, loadCaution, ...safetyCautions],
};

import { safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const researcher: Guide = {
  id: 'researcher',
  title: 'For the researcher',
  lead: 'Two testers measure 40 people three times each: how far the test can be trusted, what the group is like, what the lean goes with, and the same numbers again from a script.',
  book: 'wall-test-reliability',
  files: {
    'trials.csv': 'knee to wall, two testers, three trials each of 40 people',
    'people.csv': 'sex, lengths, and hip and shoulder on a photograph, with decimal commas',
  },
  parts: [
    {
      title: 'How far the test can be trusted',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Open or begin* press *Reliability and cohort*.',
          sees: 'A book opens with its tables and charts, and without people.',
          show: { template: 'wall-test-reliability' },
        },
        {
          id: 'trials',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `trials.csv`. Press *Add 40 rows*, then *Done*.',
          sees: 'The line of units is understood, and NA is a missing value.',
          show: { file: 'trials.csv', into: 'trials' },
        },
        {
          id: 'reliability',
          text: 'Press *Reliability* on the left.',
          sees: 'Per row: ICC with its interval, SD, standard error of measurement, minimal detectable change; between testers also the mean difference and the limits of agreement. The two people with a missing trial are left out where it matters.',
          show: { sheet: 'reliability', column: 'icc' },
          picture:
            'The reliability table: ICC with interval, both SEMs with their MDC, bias and limits of agreement.',
        },
        {
          id: 'form',
          text: 'Under *Settings* type `3,1` beside *Form of the ICC* and press Enter: testers fixed, consistency only. Then *Undo*.',
          sees: 'All ICCs follow. Between the testers consistency is higher: their mean difference no longer counts. The SEM of agreement is blank.',
          show: { name: 'icc_form' },
        },
        {
          id: 'working',
          text: 'Press the first value under *ICC*, then *Working* on the right.',
          sees: 'The mean squares, the formula and its source, to be quoted in a methods section. *Copy as text* takes it along.',
          show: { sheet: 'reliability', column: 'icc' },
        },
        {
          id: 'agreement',
          text: 'Under *Charts* press *Agreement of tester A and tester B*. *Save as SVG* keeps it for the paper.',
          show: { chart: 'chart_1' },
          picture:
            'Difference against mean of the two testers, with the mean difference and the limits of agreement.',
        },
      ],
    },
    {
      title: 'The group, and what the lean goes with',
      steps: [
        {
          id: 'people',
          text: 'Press *People* on the left, bring in `people.csv` as before, press *Add 40 rows*, then *Done*.',
          sees: 'The ankle range comes from tester A’s mean trial; the lean seen from hip and shoulder on the photograph.',
          show: { file: 'people.csv', into: 'people' },
        },
        {
          id: 'groups',
          text: 'Press *By sex* on the left.',
          sees: 'Number, mean, SD and percentiles of each measure for women and men.',
          show: { sheet: 'groups', column: 'measure' },
          picture: 'The cohort by sex: number, mean, SD and percentiles of each measure.',
        },
        {
          id: 'spread',
          text: 'Under *Charts* press *Lean seen by sex*.',
          show: { chart: 'chart_2' },
        },
        {
          id: 'regression',
          text: 'Press *Regression* on the left.',
          sees: 'The lean seen on ankle range, femur / tibia and trunk / femur: coefficients with standard errors and intervals, R² and the standard error of estimate.',
          show: { sheet: 'regression', column: 'coefficient' },
          picture: 'The regression of the lean seen on ankle range and segment ratios, with intervals.',
        },
        {
          id: 'line',
          text: 'Under *Charts* press *Lean seen and ankle range*, then *Lean seen and lean by the model*.',
          sees: 'People lean more than the model’s minimum lean: most do not use the whole ankle range.',
          show: { chart: 'chart_3' },
        },
        {
          id: 'report',
          text: 'Open the menu *Book* and press *Make the cohort report*. Look it through, *Print or save as PDF*, then *Close*.',
          sees: 'Methods with the functions used and their sources, reliability, the group by sex, results and figures. *Edit contents…* changes title, authors, text and tables.',
          show: { command: 'report' },
          picture: 'The cohort report: methods, tables and figures, ready to print.',
        },
      ],
    },
    {
      title: 'The same from a script',
      steps: [
        {
          id: 'csv',
          text: 'Press *Regression*. Open the menu *Sheet* and press *Save this sheet as CSV*.',
          sees: 'Every digit that the page computed with.',
          show: { sheet: 'regression' },
        },
        {
          id: 'script',
          text: 'In the folder of the program, after `npm ci`, write in a terminal:',
          lines: [
            'npx leverbook calc sample-books/templates/wall-test-reliability.leverbook.json \\',
            '  --import trials=sample-books/wall-test-reliability/trials.csv \\',
            '  --import people=sample-books/wall-test-reliability/people.csv --out out',
          ],
          sees: '`out/regression.csv` is the file that the page saved, to the last digit; so are the other sheets.',
        },
        {
          id: 'report-script',
          text: 'The report of a saved book comes from a script, too:',
          lines: ['npx leverbook report sample-books/wall-test-reliability.leverbook.json --out out'],
        },
        {
          id: 'save',
          text: 'Press *Save* at the top and keep the book with the paper: data, formulas and named assumptions in one text file.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [
    'The ICC depends on how much the people differ; SEM and MDC, in cm, travel better between groups.',
    'A regression of 40 people describes this sample. Nothing in it is a cause.',
    'The lean by the model is an estimate from a static two-dimensional model: for comparing set-ups of one lifter, not for diagnosis.',
    'Ask for consent and follow local rules for testing minors and for keeping health data.',
    ...safetyCautions.slice(0, 2),
  ],
};

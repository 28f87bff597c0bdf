/** The guide for researchers, step by step. */
import { safetyCautions } from './cautions.ts';
import type { Guide } from './guide.ts';

export const researcher: Guide = {
  id: 'researcher',
  title: 'For the researcher',
  lead: 'Two testers measure 40 people three times each: how reliable the test is, what the group is like, what is associated with lean, and the same numbers from a script.',
  book: 'wall-test-reliability',
  files: {
    'trials.csv': 'knee to wall, two testers, three trials each of 40 people',
    'people.csv': 'sex, lengths, and hip and shoulder on a photograph, with decimal commas',
  },
  parts: [
    {
      title: 'How reliable the test is',
      steps: [
        {
          id: 'begin',
          text: 'Press *Leverbook* at the top left. Under *Templates* press *Reliability and cohort*.',
          sees: 'A book opens with its tables and charts, but without people.',
          show: { template: 'wall-test-reliability' },
        },
        {
          id: 'trials',
          text: 'Open the menu *Book*, press *Import CSV, XLSX or ODS…* and choose `trials.csv`. Press *Add 40 rows*, then *Done*.',
          sees: 'The units line is recognised, and NA is a missing value.',
          show: { file: 'trials.csv', into: 'trials' },
        },
        {
          id: 'reliability',
          text: 'Press *Reliability* on the left.',
          sees: 'Per row: ICC with its interval, SD, standard error of measurement, minimal detectable change; between testers also the mean difference and the limits of agreement. The two people with a missing trial are excluded where it matters.',
          show: { sheet: 'reliability', column: 'icc' },
          picture:
            'The reliability table: ICC with interval, both SEMs with their MDC, bias and limits of agreement.',
        },
        {
          id: 'form',
          text: 'Under *Settings* type `3,1` beside *Form of the ICC* and press Enter: testers are fixed, consistency only. Then *Undo*.',
          sees: 'All ICCs change. Between the testers consistency is higher, because their mean difference is ignored. The SEM of agreement is blank.',
          show: { name: 'icc_form' },
        },
        {
          id: 'working',
          text: 'Press the first value under *ICC*, then *Working* on the right.',
          sees: 'The mean squares, the formula and its source, ready to quote in a methods section. *Copy as text* copies them.',
          show: { sheet: 'reliability', column: 'icc' },
        },
        {
          id: 'agreement',
          text: 'Under *Charts* press *Agreement of tester A and tester B*. *Save as SVG* saves it for the paper.',
          show: { chart: 'chart_1' },
          picture:
            'Difference against mean of the two testers, with the mean difference and the limits of agreement.',
        },
      ],
    },
    {
      title: 'The group, and what is associated with lean',
      steps: [
        {
          id: 'people',
          text: 'Press *People* on the left, import `people.csv` as before, press *Add 40 rows*, then *Done*.',
          sees: 'The ankle range comes from tester A’s mean trial; the observed lean from hip and shoulder on the photograph.',
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
          text: 'Under *Charts* press *Observed lean by sex*.',
          show: { chart: 'chart_2' },
        },
        {
          id: 'regression',
          text: 'Press *Regression* on the left.',
          sees: 'Observed lean regressed on ankle range, femur / tibia and trunk / femur: coefficients with standard errors and intervals, R² and the standard error of estimate.',
          show: { sheet: 'regression', column: 'coefficient' },
          picture: 'The regression of observed lean on ankle range and segment ratios, with intervals.',
        },
        {
          id: 'line',
          text: 'Under *Charts* press *Observed lean and ankle range*, then *Observed and minimum lean*.',
          sees: 'People lean more than the model’s minimum: most do not use the whole ankle range.',
          show: { chart: 'chart_3' },
        },
        {
          id: 'report',
          text: 'Open the menu *Book* and press *Make the cohort report*. Read through it, press *Print or save as PDF*, then *Close*.',
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
          sees: 'The file has every digit of the calculation.',
          show: { sheet: 'regression' },
        },
        {
          id: 'script',
          text: 'In a terminal, in the program’s folder, after `npm ci`, run:',
          lines: [
            'npx leverbook calc sample-books/templates/wall-test-reliability.leverbook.json \\',
            '  --import trials=sample-books/wall-test-reliability/trials.csv \\',
            '  --import people=sample-books/wall-test-reliability/people.csv --out out',
          ],
          sees: '`out/regression.csv` matches the file saved from the page to the last digit; so do the other sheets.',
        },
        {
          id: 'report-script',
          text: 'The report of a saved book can also be made from a script:',
          lines: ['npx leverbook report sample-books/wall-test-reliability.leverbook.json --out out'],
        },
        {
          id: 'save',
          text: 'Press *Save* at the top and file the book with the paper: data, formulas and settings in one text file.',
          show: { command: 'save-book' },
        },
      ],
    },
  ],
  cautions: [
    'The ICC depends on how much the people differ; SEM and MDC, in cm, are easier to compare between groups.',
    'A regression of 40 people describes this sample. The regression does not show causes.',
    'The minimum lean (model) is an estimate from a static two-dimensional model: for comparing set-ups of one lifter, not for diagnosis.',
    'Ask for consent and follow local rules for testing minors and for keeping health data.',
    ...safetyCautions.slice(0, 2),
  ],
};

import { researcher } from '../../../src/guides/researcher.ts';
import { cellOf } from '../browser.ts';
import { contents, importFile, type Journey, menu, open, sampleFile, setName, undo } from './journey.ts';

const file = (name: string) => sampleFile(researcher.book, name);
const chart = async (page: Parameters<typeof open>[0], title: string) => {
  await contents(page, title).click();
  await page.locator('.chart-head').getByText(title).waitFor();
  await page.locator('.chart-place svg').first().waitFor();
};

export const researcherJourney: Journey = {
  guide: researcher,
  does: {
    begin: async (page) => {
      await page.getByRole('button', { name: /^Leverbook/ }).click();
      await page.getByRole('button', { name: /^Reliability and cohort/ }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await contents(page, 'Trials').waitFor();
    },
    trials: (page) => importFile(page, file('trials.csv'), 40),
    reliability: (page) => open(page, 'Reliability'),
    form: (page) => setName(page, 'icc_form', '3,1'),
    working: async (page) => {
      await undo(page);
      await (await cellOf(page, 1, 'ICC')).click();
      await page.getByRole('tab', { name: 'Working' }).click();
      await page.locator('.working .steps').first().waitFor();
    },
    agreement: (page) => chart(page, 'Agreement of tester A and tester B'),
    people: async (page) => {
      await open(page, 'People');
      await importFile(page, file('people.csv'), 40);
    },
    groups: (page) => open(page, 'By sex'),
    spread: (page) => chart(page, 'Observed lean by sex'),
    regression: (page) => open(page, 'Regression'),
    line: async (page) => {
      await chart(page, 'Observed lean and ankle range');
      await chart(page, 'Observed and minimum lean');
    },
    report: async (page) => {
      await menu(page, 'Book', 'Make the cohort report');
      await page.getByRole('dialog', { name: 'Cohort report' }).waitFor();
    },
    csv: async (page) => {
      await page
        .getByRole('dialog', { name: 'Cohort report' })
        .getByRole('button', { name: 'Close' })
        .click();
      await open(page, 'Regression');
    },
    // In a terminal: the test runs the lines that the guide shows.
    script: async () => {},
    'report-script': async () => {},
    save: async (page) => {
      await Promise.all([
        page.waitForEvent('download'),
        page.locator('.head-tools').getByRole('button', { name: 'Save' }).click(),
      ]);
    },
  },
};

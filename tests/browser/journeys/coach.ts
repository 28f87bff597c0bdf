import { coach } from '../../../src/guides/coach.ts';
import { cellOf } from '../browser.ts';
import {
  contents,
  doubt,
  goToDoubt,
  importFile,
  type Journey,
  menu,
  open,
  sampleFile,
  setName,
  typeInto,
  undo,
} from './journey.ts';

const file = (name: string) => sampleFile(coach.book, name);

export const coachJourney: Journey = {
  guide: coach,
  does: {
    begin: async (page) => {
      await page.getByRole('button', { name: /^Leverbook/ }).click();
      await page.getByRole('button', { name: /^Screening, retest and monitoring/ }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await contents(page, 'Training log').waitFor();
    },
    roster: (page, look) => importFile(page, file('roster.csv'), 24, [], look),
    mend: async (page) => {
      await page.getByRole('tab', { name: /^Checks/ }).click();
      for (const [place, text] of [
        ['Roster, Body mass, row 8', '56.2'],
        ['Roster, Knee to wall, right, row 19', '6.5'],
      ] as const) {
        await goToDoubt(page, place);
        await page.keyboard.type(text);
        await page.keyboard.press('Enter');
        await doubt(page, place).waitFor({ state: 'detached' });
      }
    },
    heights: async (page) => {
      await open(page, 'Available heel lifts');
      await typeInto(page, 2, 'Height', '0.6', '1.3', '1.9', '2.5', '3');
      await contents(page, 'Available heel lifts').getByTitle('6 rows').waitFor();
    },
    lean: async (page) => {
      await open(page, 'Roster');
      await (await cellOf(page, 20, 'Minimum lean (model)')).click();
      await page.getByRole('tab', { name: 'Working' }).click();
      await page.locator('.working .steps').waitFor();
    },
    lift: async (page) => {
      await setName(page, 'target_lean', '32');
      await page.locator('.head-tools').getByRole('button', { name: /^Undo/ }).waitFor();
    },
    figure: async (page) => {
      await (await cellOf(page, 20, 'Athlete')).click();
      await page.getByRole('tab', { name: 'Figure' }).click();
      await page.locator('.drawing').waitFor();
    },
    group: async (page) => {
      await contents(page, 'Lean and ankle range').click();
      await page.locator('.chart-place svg').first().waitFor();
      await open(page, 'Summary');
    },
    contact: async (page) => {
      await menu(page, 'Book', 'Edit handout text');
      await page.getByLabel('Contact').fill('Your coach, Tuesdays at the rack');
      await page.getByRole('dialog').getByRole('button', { name: 'Save', exact: true }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    },
    handouts: async (page) => {
      await menu(page, 'Book', 'Make handouts for all athletes');
      await page.locator('.handout-pages article').first().waitFor();
    },
    retest: async (page) => {
      await page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();
      await open(page, 'Retest');
      await importFile(page, file('retest.csv'), 23, ['Same as Carla Nisse']);
    },
    ill: async (page) => {
      await (await cellOf(page, 21, 'Knee to wall, left')).click();
      await page.keyboard.press('Shift+ArrowRight');
      await page.keyboard.press('Delete');
    },
    changed: (page) => open(page, 'Summary'),
    pairs: async (page) => {
      await contents(page, 'Knee to wall, left: before and after').click();
      await page.locator('.chart-place svg').first().waitFor();
    },
    observed: async (page) => {
      await open(page, 'Observed squats');
      await importFile(page, file('observed-squats.csv'), 41);
    },
    explained: async (page) => {
      await (await cellOf(page, 20, 'Athlete')).click();
      await page.getByRole('tab', { name: 'Figure' }).click();
      await page.getByRole('heading', { name: 'Where the observed lean comes from' }).waitFor();
    },
    'heel-or-ankle': async (page) => {
      await page.getByText('Heel lift, or more ankle range?').click();
      await page.getByRole('columnheader', { name: 'Heel lift needed' }).waitFor();
    },
    team: async (page) => {
      for (const chart of ['Observed leans, before and after', 'Where observed leans come from']) {
        await contents(page, chart).click();
        await page.locator('.chart-place').getByRole('heading', { name: chart }).waitFor();
        await page.locator('.chart-place svg').first().waitFor();
      }
    },
    'own-picture': async (page) => {
      await open(page, 'Observed squats');
      await page.getByRole('tab', { name: 'Picture' }).click();
      await page.getByRole('button', { name: 'Open a picture or film…' }).waitFor();
    },
    log: async (page) => {
      await open(page, 'Training log');
      await importFile(page, file('training-log.csv'), 450, ['Same as Kaia Lindqvist']);
    },
    half: async (page) => {
      await page.getByRole('tab', { name: /^Checks/ }).click();
      await goToDoubt(page, 'Training log, Minutes, row 41');
      await page.keyboard.press('Delete');
      await doubt(page, 'Training log, Minutes, row 41').waitFor({ state: 'detached' });
    },
    monitoring: (page) => open(page, 'Monitoring'),
    week: async (page) => {
      await setName(page, 'week_end', '2025-10-26');
    },
    trends: async (page) => {
      await undo(page);
      for (const chart of ['Estimated 1RM over time', 'Session load by week']) {
        await contents(page, chart).click();
        await page.locator('.chart-head').getByText(chart).waitFor();
        await page.locator('.chart-place svg').first().waitFor();
      }
    },
    save: async (page) => {
      await Promise.all([
        page.waitForEvent('download'),
        page.locator('.head-tools').getByRole('button', { name: 'Save' }).click(),
      ]);
    },
  },
};

import { lifter } from '../../../src/guides/lifter.ts';
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
} from './journey.ts';

export const lifterJourney: Journey = {
  guide: lifter,
  does: {
    begin: async (page) => {
      await page.getByRole('button', { name: /^Leverbook/ }).click();
      await page.getByRole('button', { name: /^My training and my build/ }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await contents(page, 'At a glance').waitFor();
    },
    export: (page, look) => importFile(page, sampleFile(lifter.book, 'training-export.csv'), 687, [], look),
    mend: async (page) => {
      await page.getByRole('tab', { name: /^Checks/ }).click();
      for (const [place, text] of [
        ['Training, Load, row 34', '45 lb'],
        ['Training, RPE, row 121', '7.5'],
      ] as const) {
        await goToDoubt(page, place);
        await page.keyboard.type(text);
        await page.keyboard.press('Enter');
        await doubt(page, place).waitFor({ state: 'detached' });
      }
    },
    glance: async (page) => {
      await open(page, 'At a glance');
      await (await cellOf(page, 2, 'Value')).click();
      await page.getByRole('tab', { name: 'Working' }).click();
      await page.locator('.working h3').first().waitFor();
    },
    maximum: async (page) => {
      await contents(page, 'Estimated 1RM over time').click();
      await page.locator('.chart-place svg').first().waitFor();
    },
    best: (page) => open(page, 'Best sets'),
    weeks: async (page, look) => {
      await open(page, 'Weeks');
      await look();
      await contents(page, 'Session load by week').click();
      await page.locator('.chart-head').getByText('Session load by week').waitFor();
      await page.locator('.chart-place svg').first().waitFor();
    },
    measure: async (page) => {
      await open(page, 'My measures');
      await (await cellOf(page, 1, 'Occasion')).click();
      for (const text of [
        'Two years on',
        '2025-09-27',
        '130.5',
        '86',
        '47',
        '6.5',
        '24.5',
        '9',
        '9',
        '68.5',
      ]) {
        await page.keyboard.type(text);
        await page.keyboard.press('Tab');
      }
    },
    heels: async (page) => {
      await open(page, 'Available heel lifts');
      await typeInto(page, 2, 'Height', '0.6', '1.3', '1.9', '2.5', '3');
      await contents(page, 'Available heel lifts').getByTitle('6 rows').waitFor();
    },
    lean: async (page) => {
      await open(page, 'My measures');
      await setName(page, 'target_lean', '32');
    },
    figure: async (page) => {
      await (await cellOf(page, 1, 'Occasion')).click();
      await page.getByRole('tab', { name: 'Figure' }).click();
      const field = page.getByRole('spinbutton', { name: 'Heel lift, cm' });
      await field.fill('1.9');
      await field.press('Enter');
      await page.locator('.figure-numbers thead').getByText('1.9 cm heel lift').waitFor();
    },
    page: async (page) => {
      await page.getByRole('button', { name: 'Reset to this row' }).click();
      await menu(page, 'Book', 'Make a handout for this athlete');
      await page.locator('.handout-pages article').first().waitFor();
    },
    save: async (page) => {
      await page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();
      await Promise.all([
        page.waitForEvent('download'),
        page.locator('.head-tools').getByRole('button', { name: 'Save' }).click(),
      ]);
    },
  },
};

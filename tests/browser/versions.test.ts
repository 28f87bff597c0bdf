import { expect, test } from 'vitest';
import { runCommand, sheetShown } from './browser.ts';
import { inBrowser } from './in-browser.ts';

/** Named versions on the page: kept, asked about before one goes, and there after the page was loaded anew. */

const watched = inBrowser({ each: true });

test('a version goes only after it was asked about, and what is kept stays over a reload', async () => {
  const { page } = watched;
  const names = () => page.locator('.versions li strong').allTextContents();
  const field = page.getByPlaceholder('before the spring test');
  const removal = (name: string) =>
    page.locator('.versions li').filter({ hasText: name }).getByRole('button', { name: 'Remove' });
  await runCommand(page, 'Versions');
  for (const name of ['Before the camp', 'After the camp']) {
    await field.fill(name);
    await page.keyboard.press('Enter');
    await page.locator('.versions').getByText(name).waitFor();
  }

  await removal('Before the camp').click();
  expect(await names()).toEqual(['After the camp', 'Before the camp']);
  // The safe answer has the focus: a second press on the key that asked takes nothing.
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByRole('button', { name: 'Remove permanently' }).count()).toBe(0);
  expect(await names()).toEqual(['After the camp', 'Before the camp']);

  await removal('Before the camp').click();
  await page.getByRole('button', { name: 'Remove permanently' }).click();
  await expect.poll(names).toEqual(['After the camp']);

  await page.reload();
  await sheetShown(page);
  await runCommand(page, 'Versions');
  await expect.poll(names).toEqual(['After the camp']);
});

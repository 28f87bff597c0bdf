import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { launch, serve, sheetShown } from './browser.ts';

/**
 * Pictures of the built page into a folder, for eyes: `SHOTS=folder node -e "import('vite').then(v=>v.runnerImport('./tests/browser/shots.ts'))"`.
 * `SHOTS_FROM` names another built page, `SHOTS_ONLY` a part of the pictures' names. Not a test.
 */
const folder = process.env.SHOTS ?? 'shots';
const only = process.env.SHOTS_ONLY ?? '';

interface Shot {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly dark?: boolean;
  readonly touch?: boolean;
  readonly prepare?: (page: Page) => Promise<void>;
}

const tab = (name: string) => async (page: Page) => page.getByRole('tab', { name }).click();
const bar = (name: string) => async (page: Page) =>
  page.locator('.narrow-bar').getByRole('button', { name }).click();

const shots: readonly Shot[] = [
  { name: 'desk-light', width: 1280, height: 800 },
  { name: 'desk-dark', width: 1280, height: 800, dark: true },
  { name: 'wide-light', width: 1680, height: 960 },
  { name: 'tablet-light', width: 820, height: 1100, touch: true },
  { name: 'phone-figure-light', width: 390, height: 844, touch: true, prepare: bar('Figure') },
  { name: 'phone-sheet-light', width: 390, height: 844, touch: true },
  { name: 'phone-dark', width: 390, height: 844, touch: true, dark: true },
  { name: 'phone-contents-light', width: 390, height: 844, touch: true, prepare: bar('Contents') },
  { name: 'small-light', width: 360, height: 640, touch: true },
  { name: 'desk-working', width: 1280, height: 800, prepare: tab('Working') },
  { name: 'desk-guide', width: 1280, height: 800, prepare: tab('Guide') },
  { name: 'desk-checks', width: 1280, height: 800, prepare: tab('Checks') },
  {
    name: 'desk-finder',
    width: 1280,
    height: 800,
    prepare: async (page) => {
      await page.keyboard.press('F1');
    },
  },
  {
    name: 'desk-menu',
    width: 1280,
    height: 800,
    prepare: async (page) => {
      await page.getByRole('button', { name: 'View', exact: true }).click();
    },
  },
  {
    name: 'desk-formula',
    width: 1280,
    height: 800,
    prepare: async (page) => {
      await page.locator('.ht_clone_inline_start tbody td').first().click();
      await page.keyboard.press('End');
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('Shift+F2');
      await page.keyboard.type(' + LEAN.PARALLEL(femur, ti', { delay: 15 });
      await page.waitForTimeout(400);
    },
  },
];

await mkdir(folder, { recursive: true });
const served = await serve(process.env.SHOTS_FROM);
for (const shot of shots.filter(({ name }) => name.includes(only))) {
  const { page, faults, close } = await launch(served.address, {
    viewport: { width: shot.width, height: shot.height },
    colorScheme: shot.dark ? 'dark' : 'light',
    deviceScaleFactor: 2,
    ...(shot.touch ? { hasTouch: true, isMobile: true } : {}),
  });
  try {
    await sheetShown(page);
    await page.waitForTimeout(400);
    await shot.prepare?.(page);
    await page.waitForTimeout(400);
    await page.screenshot({ path: join(folder, `${shot.name}.png`) });
  } catch (reason) {
    console.log(`${shot.name}: ${reason}`);
    await page.screenshot({ path: join(folder, `${shot.name}-failed.png`) });
  }
  for (const fault of faults) console.log(`${shot.name}: ${fault}`);
  await close();
}
await served.close();

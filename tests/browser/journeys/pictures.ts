import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pictureName, stepsOf } from '../../../src/guides/index.ts';
import { cellOf, launch, serve, sheetShown, withoutFileAccess } from '../browser.ts';
import { journeys } from './all.ts';

/**
 * `npm run pictures`: the pictures of the guides, from the page that was built last (or the one in `BUILT`), by going the guides' ways. Light, one
 * pixel a pixel, so that they stay small. `ONLY=coach` makes one guide's,
 * `ONLY=page` that of the page.
 */
const folder = 'docs/pictures';
const wide = { width: 2900, height: 1100 };
const asSeen = { width: 1200, height: 740 };

const served = await serve(process.env.BUILT);
for (const { guide, does } of journeys.filter(
  ({ guide }) => !process.env.ONLY || guide.id === process.env.ONLY,
)) {
  for (const old of readdirSync(folder).filter((name) => name.startsWith(`guide-${guide.id}-`)))
    rmSync(join(folder, old));
  const { page, close } = await launch(
    served.address,
    { viewport: wide, colorScheme: 'light' },
    withoutFileAccess,
  );
  // What the page says once is said before the pictures.
  await page.getByText('Saved in this browser').first().waitFor();
  await page.reload();
  await sheetShown(page);
  for (const step of stepsOf(guide)) {
    const path = join(folder, pictureName(guide, step));
    let taken = false;
    const look = async () => {
      if (!step.picture || taken) return;
      taken = true;
      await page.setViewportSize(asSeen);
      // What was chosen is brought into view again.
      if (await page.evaluate(() => document.activeElement?.closest('.sheet-grid') !== null)) {
        await page.keyboard.press('ArrowDown');
        await page.keyboard.press('ArrowUp');
      }
      await page.waitForTimeout(700);
      await page.screenshot({ path });
      await page.setViewportSize(wide);
      console.log(`${path}: ${Math.round(statSync(path).size / 1024)} kB`);
    };
    await does[step.id]!(page, look);
    await look();
  }
  await close();
}
if (!process.env.ONLY || process.env.ONLY === 'page') {
  const { page, close } = await launch(served.address, {
    viewport: { width: 1280, height: 800 },
    colorScheme: 'light',
  });
  await sheetShown(page);
  await page.getByText('Saved in this browser').first().waitFor();
  await page.reload();
  await sheetShown(page);
  // The lifter with the stiffest ankles, at the column of the lean.
  await (await cellOf(page, 20, 'Minimum lean (model)')).click();
  await page.waitForTimeout(700);
  await page.screenshot({ path: join(folder, 'page.png') });
  await close();
}
await served.close();

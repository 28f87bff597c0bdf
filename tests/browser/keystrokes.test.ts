import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildAndServe, cellOf, launch, type Served, sheetShown, type Watched } from './browser.ts';
import { editorLoaded, keys, lineText, rowsShow, shown } from './workbook.ts';

/** Nothing that is typed is lost or goes elsewhere, however slow the page is. */

const row = 2;
let served: Served;
let watched: Watched;
beforeAll(async () => {
  served = await buildAndServe();
  watched = await launch(served.address, { viewport: { width: 2900, height: 900 } });
  await sheetShown(watched.page);
  await editorLoaded(watched.page);
});
afterAll(async () => {
  await watched?.close();
  await served?.close();
});

/** The ratio that the sample's column shows, the other way round. */
async function tibiaToFemur(page: Page): Promise<string> {
  const [femur, tibia] = [await shown(page, row, 'Femur'), await shown(page, row, 'Tibia')];
  return (Number(tibia) / Number(femur)).toFixed(3);
}

test('keys that come before the formula editor has loaded are kept and go on in it', async () => {
  const { page, faults } = watched;
  let send = () => {};
  const held = new Promise<void>((resolve) => {
    send = resolve;
  });
  await page.route('**/editor-*.js', async (route) => {
    await held;
    await route.continue();
  });
  await page.reload();
  await sheetShown(page);
  const ratio = await cellOf(page, row, 'Femur / tibia');
  await ratio.click();
  await keys(page, 'Shift+F2', 'Control+a');
  await page.keyboard.type('tibia / fem');
  expect(await lineText(page)).toBe('tibia / fem');
  send();
  await editorLoaded(page);
  await page.unroute('**/editor-*.js');
  await page.keyboard.type('ur');
  expect(await lineText(page)).toBe('tibia / femur');
  const wanted = await tibiaToFemur(page);
  await keys(page, 'Escape', 'Shift+F2', 'Control+a');
  await page.keyboard.type('tibia / femur');
  await keys(page, 'Escape', 'Enter');
  await expect.poll(() => shown(page, row, 'Femur / tibia')).toBe(wanted);
  await keys(page, 'Control+z');
  expect(faults).toEqual([]);
});

test('with frames that come late, what is typed over a chosen text replaces it whole', async () => {
  const { page, faults } = watched;
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
  // Frames and short waits come a quarter of a second late, as on a machine that is busy with something else.
  await page.evaluate(() => {
    const frame = window.requestAnimationFrame.bind(window);
    const wait = window.setTimeout.bind(window);
    window.requestAnimationFrame = (work) => {
      wait(() => frame(work), 250);
      return 0;
    };
    window.setTimeout = ((work: () => void, after = 0) =>
      wait(work, after > 0 ? after + 250 : 0)) as typeof window.setTimeout;
  });
  for (const heading of ['Femur', 'Femur / tibia', 'Lean at parallel', 'Femur / tibia']) {
    await (await cellOf(page, row, heading)).click();
    await keys(page, 'Shift+F2', 'Control+a');
    await page.keyboard.type('t');
    await page.waitForTimeout(300);
    await page.keyboard.type('ibia / femur');
    expect(await lineText(page)).toBe('tibia / femur');
    await keys(page, 'Escape', 'Escape', 'Escape');
  }
  expect(faults).toEqual([]);
});

test('on a slow processor no key is lost between the sheet and the line, and none goes to the wrong cell', async () => {
  const { page, context, faults } = watched;
  await page.reload();
  await sheetShown(page);
  const driver = await context.newCDPSession(page);
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  const before = [await shown(page, row, 'Femur'), await shown(page, row + 1, 'Femur')];
  await (await cellOf(page, row, 'Femur')).click();
  // A formula, a number and a formula, without waiting for anything.
  await page.keyboard.type('=40+1');
  await keys(page, 'Enter');
  await page.keyboard.type('42.5');
  await keys(page, 'Enter');
  await page.keyboard.type('=40+4');
  await keys(page, 'Enter');
  await rowsShow(page, ['Femur'], [[await shown(page, 1, 'Femur')], ['41.0'], ['42.5'], ['44.0']]);
  // A number changed at its end.
  await (await cellOf(page, row + 1, 'Femur')).click();
  await keys(page, 'F2');
  await page.keyboard.type('25');
  await keys(page, 'Enter', 'ArrowUp', 'F2', 'Home');
  await page.keyboard.type('1');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row + 1, 'Femur')).toBe('142.5');
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await keys(page, 'Control+z', 'Control+z', 'Control+z', 'Control+z', 'Control+z');
  await expect
    .poll(async () => [await shown(page, row, 'Femur'), await shown(page, row + 1, 'Femur')])
    .toEqual(before);
  expect(faults).toEqual([]);
});

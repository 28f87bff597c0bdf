import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { inBrowser } from './in-browser.ts';
import { type Camera, drawn, HEIGHT, type Posture, seen, WIDTH } from './side-picture.ts';

/** Digitising a side picture on a phone, by touch alone. */

const viewport = { width: 390, height: 844 };
const watched = inBrowser({ viewport, hasTouch: true, isMobile: true });

const posture: Posture = { lean: 41, shin: 29, depth: -4 };
const camera: Camera = { distance: 400, height: 60, roll: 0, yaw: 0, looks: 'right' };

test('points are placed, nudged and saved by touch on a phone, and the panel has no accessibility fault', async () => {
  const { page, faults } = watched;
  const tap = async (of: Locator) => {
    await of.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await of.boundingBox())!;
    await page.touchscreen.tap(x + width / 2, y + height / 2);
  };
  await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Commands' }));
  await page.locator('.finder[open]').waitFor();
  await page.keyboard.type('observed lean digitise');
  await tap(page.getByRole('option', { name: /^Picture/ }).first());
  await tap(page.getByRole('button', { name: 'Go to Observed squats' }));
  const panel = page.getByRole('region', { name: 'Picture' });
  const opener = panel.getByRole('button', { name: 'Open a picture or film…' });
  // On a phone the sheet takes the place of the panel.
  if (!(await opener.isVisible())) {
    await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Commands' }));
    await page.locator('.finder[open]').waitFor();
    await page.keyboard.type('observed lean digitise');
    await tap(page.getByRole('option', { name: /^Picture/ }).first());
  }
  await opener.waitFor();
  const points = seen(posture, camera);
  await page
    .getByLabel('Picture or film', { exact: true })
    .setInputFiles({ name: 'phone.png', mimeType: 'image/png', buffer: await drawn(page, points) });
  const stage = panel.getByRole('application');
  await stage.waitFor();
  const choose = (point: string) =>
    tap(page.locator('.points').getByRole('button', { name: new RegExp(`^${point}, (not )?placed`) }));
  const reading = async (label: string): Promise<number> => {
    const text = (await page
      .locator('.readings tr', { hasText: label })
      .locator('td')
      .first()
      .textContent())!;
    return Number(text.replace('−', '-').replace(/[°\s].*$/, ''));
  };
  // Sample points of the row are cleared: each is placed here.
  for (const [name, [x, y]] of Object.entries(points)) {
    await choose(name);
    await stage.scrollIntoViewIfNeeded();
    const box = (await page.locator('.picture-medium').boundingBox())!;
    await page.touchscreen.tap(box.x + (x / WIDTH) * box.width, box.y + (y / HEIGHT) * box.height);
    await page
      .locator('.points')
      .getByRole('button', { name: `${name}, placed` })
      .waitFor();
  }
  // One pixel of the screen is some three of the picture.
  expect(Math.abs((await reading('Observed lean')) - posture.lean)).toBeLessThanOrEqual(2);
  expect(Math.abs((await reading('Shin angle')) - posture.shin)).toBeLessThanOrEqual(2);

  await choose('Shoulder');
  const before = await reading('Observed lean');
  await tap(panel.getByRole('button', { name: '10 px' }));
  for (let i = 0; i < 4; i++) await tap(panel.getByRole('button', { name: 'Move shoulder right by 10 px' }));
  await expect.poll(() => reading('Observed lean')).toBeGreaterThan(before);
  for (let i = 0; i < 4; i++) await tap(panel.getByRole('button', { name: 'Undo point' }));
  await expect.poll(() => reading('Observed lean')).toBe(before);

  // A finger finds every button of the panel, and nothing is wider than the phone.
  for (const button of await panel.locator('button').all()) {
    const { width, height } = (await button.boundingBox())!;
    const name = await button.evaluate(
      (element) => element.getAttribute('aria-label') ?? element.textContent,
    );
    expect(Math.min(width, height), name ?? '').toBeGreaterThanOrEqual(44);
  }
  expect(await panel.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
  expect(await violations(page)).toEqual([]);

  await tap(panel.getByRole('button', { name: /^Save to row/ }));
  await page.getByText(/^Points saved in row \d+\.$/).waitFor();
  expect(faults).toEqual([]);
});

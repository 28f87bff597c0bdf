import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { buildAndServe, launch, type Served, sheetShown, type Watched } from './browser.ts';

/** Beside the rack, by touch: a phone and a tablet. */

let served: Served;
beforeAll(async () => {
  served = await buildAndServe();
});
afterAll(async () => {
  await served?.close();
});

describe.each([
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
])('rack mode at $width px', (viewport) => {
  let watched: Watched;
  beforeAll(async () => {
    watched = await launch(served.address, { viewport, hasTouch: true, isMobile: true });
  });
  afterAll(async () => {
    await watched?.close();
  });

  test('three trials left and right with their mean, the next athlete, a reload and undo, by touch', async () => {
    const { page, faults } = watched;
    await sheetShown(page);
    const tap = async (of: Locator) => {
      await of.scrollIntoViewIfNeeded();
      const { x, y, width, height } = (await of.boundingBox())!;
      await page.touchscreen.tap(x + width / 2, y + height / 2);
    };
    const rack = page.getByRole('region', { name: 'Rack mode' });
    const name = rack.getByRole('heading');
    const open = async () => {
      await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Commands' }));
      await page.locator('.finder[open]').waitFor();
      await page.keyboard.type('rack mode');
      await tap(page.getByRole('option').first());
      await expect.poll(() => name.textContent()).toMatch(/[a-z]/);
    };
    await open();
    const first = await name.textContent();

    // Every target is at least 44 px high, and the fields ask for the keypad of numbers.
    const fields = rack.getByRole('textbox');
    await expect.poll(() => fields.count()).toBeGreaterThanOrEqual(9);
    for (const field of await fields.all()) {
      expect(await field.getAttribute('inputmode')).toBe('decimal');
      expect((await field.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    }
    for (const button of await rack.getByRole('button').all())
      expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(await page.evaluate(() => document.querySelector('.rack')!.scrollWidth)).toBeLessThanOrEqual(
      viewport.width,
    );

    const trial = (side: string, number: number) =>
      rack.getByRole('textbox', { name: `Knee to wall, ${side}, trial ${number} cm` });
    const type = async (of: Locator, text: string) => {
      await tap(of);
      await page.keyboard.type(text);
    };
    // By hand: (9 + 9.6 + 9.9) / 3 = 9.5.
    await type(trial('left', 1), '9');
    await page.keyboard.press('Enter');
    await page.keyboard.type('9.6');
    await page.keyboard.press('Enter');
    await page.keyboard.type('9.9');
    const mean = (side: string) => rack.getByRole('status', { name: `Knee to wall, ${side}, mean` });
    await expect.poll(() => mean('left').textContent()).toBe('mean 9.5 cm');
    await type(trial('right', 1), 'abc');
    await expect.poll(() => rack.getByRole('alert').textContent()).toContain('"abc" is not a number.');
    // Cut off at once: nothing that was typed is lost.
    await page.reload();
    await name.waitFor();
    await expect.poll(() => name.textContent()).toBe(first);
    await expect.poll(() => trial('left', 3).inputValue()).toBe('9.9');
    expect(await trial('left', 1).inputValue()).toBe('9');
    expect(await trial('right', 1).inputValue()).toBe('abc');
    await type(trial('right', 1), '8');
    await tap(rack.getByRole('button', { name: 'Next athlete' }));
    await expect.poll(() => name.textContent()).not.toBe(first);
    await expect.poll(() => trial('left', 2).inputValue()).toBe('');
    expect(await violations(page)).toEqual([]);
    await tap(rack.getByRole('button', { name: 'Previous athlete' }));
    await expect.poll(() => trial('right', 1).inputValue()).toBe('8');
    await tap(rack.getByRole('button', { name: 'Undo' }));
    await expect.poll(() => trial('right', 1).inputValue()).not.toBe('8');
    await tap(rack.getByRole('button', { name: 'Close' }));
    await rack.waitFor({ state: 'detached' });
    // From the book, whichever athlete's row is selected now.
    await open();
    await rack.getByRole('combobox', { name: 'Athlete' }).selectOption(first!);
    await expect.poll(() => trial('left', 2).inputValue()).toBe('9.6');
    expect(faults).toEqual([]);
  });
});

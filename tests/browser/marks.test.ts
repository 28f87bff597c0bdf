import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellOf, launch, sheetShown } from './browser.ts';
import { pageAddress } from './in-browser.ts';
import { FAR, markByKeyboard, openMarks } from './marking.ts';

/** What a mark says, and the whole number beside it. */
async function told(cell: Locator): Promise<{ says: string | null; number: number }> {
  const sign = cell.getByRole('img');
  return {
    says: (await sign.count()) === 0 ? null : await sign.getAttribute('aria-label'),
    number: Number(await cell.textContent()),
  };
}

test('three rules made by keyboard mark the cells they hold in, by words, until undo takes them off', async () => {
  const { page, faults, close } = await launch(pageAddress(), { viewport: { width: 3800, height: 900 } });
  try {
    await sheetShown(page);
    await markByKeyboard(page);
    expect(await page.getByRole('dialog').getAttribute('aria-label')).toBe('Marks on Minimum lean (model)');
    const notes = page.locator('.mark-rule .mark-note');
    await expect
      .poll(async () => (await notes.allTextContents()).every((note) => note.startsWith('Matches ')))
      .toBe(true);
    const counts = (await notes.allTextContents()).map((note) => Number(/Matches (\d+) of/.exec(note)?.[1]));
    await page.keyboard.press('Enter');
    await page.locator('.dialogue').waitFor({ state: 'detached' });

    // The column shows whole degrees, and every bound lies half a degree from one: what is shown says which rule holds.
    const column = (heading: string) =>
      Promise.all(Array.from({ length: 16 }, (_, row) => cellOf(page, row + 1, heading)));
    const cells = await column('Minimum lean (model)');
    await page.locator('.ht_master td.marked').first().waitFor();
    const rows = await Promise.all(cells.map(told));
    const lifts = await Promise.all((await column('Heel lift needed')).map((cell) => cell.textContent()));
    const target = Number(await page.locator('[data-setting="target_lean"] input').inputValue());
    const wanted = (lean: number, lift: string | null) => {
      if (lean > FAR) return 'attend: far more than aimed at';
      if (lean > target + 0.5 && lift !== 'none needed') return 'watch';
      return lean <= target + 0.5 ? 'good' : null;
    };
    expect(rows).toEqual(rows.map(({ number }, row) => ({ number, says: wanted(number, lifts[row]!) })));
    expect(new Set(rows.map(({ says }) => says)).size).toBe(4);
    expect(rows.filter(({ number }) => number > FAR).length).toBeLessThanOrEqual(counts[0]!);
    // The mark is part of the cell's name, and its description says why.
    const first = rows.findIndex(({ says }) => says === 'good');
    const named = page.getByRole('gridcell', { name: `good ${rows[first]!.number}`, exact: true });
    expect(await named.count()).toBeGreaterThan(0);
    expect(await cells[first]!.getAttribute('title')).toBe(
      'good (Minimum lean (model) is at most target_lean + 0.5)',
    );
    for (let row = 0; row < first; row++) await page.keyboard.press('ArrowDown');
    await expect
      .poll(() => page.locator('.marked-note').allTextContents())
      .toEqual(['Marked good (Minimum lean (model) is at most target_lean + 0.5).']);

    await page.keyboard.press('Control+z');
    await expect.poll(() => cells[first]!.getByRole('img').count()).toBe(0);
    await page.keyboard.press('Control+y');
    await expect.poll(() => cells[first]!.getByRole('img').count()).toBe(1);
    expect(faults).toEqual([]);
  } finally {
    await close();
  }
});

test('a rule that is moved takes the focus with it, and its other rules keep their places', async () => {
  const { page, faults, close } = await launch(pageAddress(), { viewport: { width: 1280, height: 900 } });
  try {
    await sheetShown(page);
    await markByKeyboard(page);
    const dialogue = page.getByRole('dialog');
    const tones = async () =>
      Promise.all(
        (await dialogue.getByRole('combobox', { name: 'Mark', exact: true }).all()).map((one) =>
          one.inputValue(),
        ),
      );
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    expect(await tones()).toEqual(['attend', 'watch', 'good']);
    await dialogue.getByRole('button', { name: 'Rule 3: move up' }).press('Enter');
    await expect.poll(focused).toBe('Rule 2: move up');
    expect(await tones()).toEqual(['attend', 'good', 'watch']);
    // At the top only the way down is left.
    await page.keyboard.press('Enter');
    await expect.poll(focused).toBe('Rule 1: move down');
    expect(await tones()).toEqual(['good', 'attend', 'watch']);
    await page.keyboard.press('Enter');
    await expect.poll(focused).toBe('Rule 2: move down');
    // At the bottom only the way up.
    await page.keyboard.press('Enter');
    await expect.poll(focused).toBe('Rule 3: move up');
    expect(await tones()).toEqual(['attend', 'watch', 'good']);
    expect(faults).toEqual([]);
  } finally {
    await close();
  }
});

test('a rule that cannot be read says why beside it, and the book stays as it was', async () => {
  const { page, faults, close } = await launch(pageAddress(), { viewport: { width: 390, height: 844 } });
  try {
    await sheetShown(page);
    await openMarks(page);
    const dialogue = page.getByRole('dialog');
    await page.keyboard.press('Tab');
    await page.keyboard.type('target_laen');
    const input = dialogue.getByLabel('Compared with');
    const note = page.locator(`#${await input.getAttribute('aria-describedby')}`);
    await expect.poll(() => note.textContent()).toMatch(/target_laen.*target_lean/);
    expect(await input.getAttribute('aria-invalid')).toBe('true');
    await page.keyboard.press('Enter');
    await expect.poll(() => dialogue.getByRole('status').textContent()).toMatch(/^Rule 1: .*target_laen/);
    // Nothing runs over the edge of a narrow screen.
    expect(await dialogue.evaluate((box) => box.scrollWidth - box.clientWidth)).toBe(0);
    await page.keyboard.press('Escape');
    await dialogue.waitFor({ state: 'detached' });
    expect(await page.locator('td.marked').count()).toBe(0);
    expect(faults).toEqual([]);
  } finally {
    await close();
  }
});

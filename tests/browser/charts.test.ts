import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { squadBook } from '../session/charts/squad.ts';
import { violations } from './axe.ts';
import { cellOf, runCommand, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

const squad = squadBook();
const roster = [...squad.records('roster')].map(({ values }) => values as Record<string, number | string>);

const watched = inBrowser({ viewport: { width: 1280, height: 900 }, first: withoutFileAccess });
beforeEach(async () => {
  const { page } = watched;
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Control+o')]);
  await chooser.setFiles({
    name: 'squad.leverbook.json',
    mimeType: 'application/json',
    buffer: Buffer.from(squad.save()),
  });
  await page.locator('.contents-item', { hasText: 'Monthly maxima' }).waitFor();
  await sheetShown(page);
});

/** The control of a form's field by its heading; hints and choices count as parts of a label, so it is not asked for by name. */
const field = (page: Page, label: string) =>
  page
    .locator('.field', { has: page.locator('.field-label').getByText(label, { exact: true }) })
    .locator('select, input');

/** Makes a chart as a person does: what to see, of which sheet and columns, by whom. */
async function make(
  page: Page,
  kind: string,
  sheet: string,
  choices: Readonly<Record<string, string>>,
  panels = false,
): Promise<void> {
  await runCommand(page, 'Add a chart');
  await field(page, 'Chart type').selectOption({ label: kind });
  await field(page, 'Sheet').selectOption({ label: sheet });
  for (const [label, column] of Object.entries(choices))
    await field(page, label).selectOption({ label: column });
  if (panels) await page.getByLabel('One small chart for each').check();
  await page.getByRole('button', { name: 'Create chart' }).click();
  await page.locator('.chart-stage .chart-svg').first().waitFor();
}
const drawn = async (page: Page): Promise<string> =>
  (await page.locator('.chart-stage .chart-svg').allTextContents()).join(' ');
const reading = (page: Page) => page.locator('output.chart-reading');

test.each<[kind: string, sheet: string, choices: Record<string, string>, shows: readonly string[]]>([
  [
    'Two measures',
    'Roster',
    { 'x-axis': 'Ankle range', 'y-axis': 'Lean at parallel' },
    ['Ankle range (°)', 'Lean at parallel (°)'],
  ],
  [
    'Agreement of two methods or trials',
    'Knee to wall, tested twice',
    { First: 'First test', Second: 'Second test' },
    ['First test − Second test (cm)', 'Mean of both (cm)', 'limit'],
  ],
  [
    'Before and after',
    'Knee to wall, tested twice',
    { Before: 'First test', After: 'After ten weeks', Groups: 'Group' },
    ['First test (cm)', 'After ten weeks (cm)'],
  ],
  [
    'Over time',
    'Monthly maxima',
    { Date: 'Date', Measure: 'Best squat', Athlete: 'Athlete' },
    ['Best squat (kg)', 'Abena', 'Teo', 'Apr'],
  ],
  [
    'Spread by group',
    'Roster',
    { Measure: 'Lean at parallel', Groups: 'Group' },
    ['Lean at parallel (°)', 'morning', 'evening'],
  ],
  [
    'Left against right',
    'Knee to wall, tested twice',
    { Left: 'Left', Right: 'Right' },
    ['Left (cm)', 'Right (cm)'],
  ],
  [
    'Load by week',
    'Sessions',
    { Date: 'Date', Load: 'Session load', Athlete: 'Athlete' },
    ['Abena', 'Teo', '1,000'],
  ],
])('%s is drawn after three choices, with its axes named', async (kind, sheet, choices, shows) => {
  const { page, faults } = watched;
  await make(page, kind, sheet, choices);
  const text = await drawn(page);
  for (const words of shows) expect(text).toContain(words);
  expect(await violations(page)).toEqual([]);
  expect(faults).toEqual([]);
});

test('small drawings of all athletes have the same axes, and their axes are named once', async () => {
  const { page, faults } = watched;
  await make(
    page,
    'Over time',
    'Monthly maxima',
    { Date: 'Date', Measure: 'Best squat', Athlete: 'Athlete' },
    true,
  );
  const panels = page.locator('.chart-panels .chart-svg');
  await expect.poll(() => panels.count()).toBe(20);
  expect(await page.locator('.chart-axes').textContent()).toContain('y-axis: Best squat (kg)');
  const ticks = await panels.evaluateAll((all) =>
    all.map((svg) => svg.querySelector('[data-mark="y-axis tick label"]')?.textContent),
  );
  expect(new Set(ticks).size).toBe(1);
  expect(faults).toEqual([]);
});

test('a point is read by pointing and by keys, all points in the table, and Enter goes to the row', async () => {
  const { page, faults } = watched;
  await make(page, 'Two measures', 'Roster', { 'x-axis': 'Ankle range', 'y-axis': 'Lean at parallel' });
  const stage = page.locator('.chart-stage');
  const byAnkle = roster.toSorted(
    (a, b) => Number(a.ankle) - Number(b.ankle) || Number(a.lean) - Number(b.lean),
  );
  await stage.focus();
  await page.keyboard.press('ArrowRight');
  expect(await reading(page).textContent()).toContain(
    `${byAnkle[0]!.athlete}: Ankle range (°) ${byAnkle[0]!.ankle}`,
  );
  await page.keyboard.press('ArrowRight');
  expect(await reading(page).textContent()).toContain(
    `${byAnkle[1]!.athlete}: Ankle range (°) ${byAnkle[1]!.ankle}`,
  );
  await page.keyboard.press('End');
  expect(await reading(page).textContent()).toContain(String(byAnkle.at(-1)!.athlete));
  // The first mark stands for the first row: what is read over it is that row.
  const mark = await page.locator('.chart-svg [data-mark="dot"] path').first().boundingBox();
  await page.mouse.move(mark!.x + mark!.width / 2 + 1, mark!.y + mark!.height / 2);
  const said = `${roster[0]!.athlete}: Ankle range (°) ${roster[0]!.ankle}, Lean at parallel (°) ${Number(Number(roster[0]!.lean).toPrecision(4))}`;
  await expect.poll(() => page.locator('.chart-tip').textContent()).toBe(said);
  expect(await reading(page).textContent()).toBe(said);
  await stage.focus();
  await page.keyboard.press('t');
  await expect.poll(() => page.locator('.chart-table tbody tr').count()).toBe(20);
  expect(await page.locator('.chart-table tbody tr').first().textContent()).toContain(
    `${roster[0]!.athlete}`,
  );
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('t');
  await page.locator('.chart-stage .chart-svg').waitFor();
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await page.locator('.chart-place').waitFor({ state: 'detached' });
  const row = roster.indexOf(byAnkle[0]!) + 1;
  await expect
    .poll(() => page.locator('.sheet-grid td.current, .sheet-grid td.area').first().textContent())
    .toBe(Number(byAnkle[0]!.lean).toFixed(0));
  expect(await (await cellOf(page, row, 'Athlete')).textContent()).toBe(byAnkle[0]!.athlete);
  expect(faults).toEqual([]);
});

test('among many lines of one colour, the one that is read stands out', async () => {
  const { page, faults } = watched;
  await make(page, 'Over time', 'Monthly maxima', {
    Date: 'Date',
    Measure: 'Best squat',
    Athlete: 'Athlete',
  });
  await page.locator('.chart-stage').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  expect(await reading(page).textContent()).toMatch(/^Bruno: Date \d+ Jan 2025/);
  await expect.poll(() => page.locator('text.chart-lit').textContent()).toBe('Bruno');
  expect(await page.locator('g.chart-lit, path.chart-lit').count()).toBeGreaterThan(0);
  expect(faults).toEqual([]);
});

test('a chart follows an edit and the sheet’s filter, and undo', async () => {
  const { page, faults } = watched;
  await make(page, 'Spread by group', 'Roster', { Measure: 'Ankle range', Groups: 'Group' });
  const notes = page.locator('.chart-notes');
  expect(await notes.textContent()).toContain('morning: 10 values');
  const chart = page.locator('.contents-item', { hasText: 'Ankle range' });
  await page.getByRole('button', { name: 'Back to the sheet' }).click();
  await page.locator('.contents-item', { hasText: 'Roster' }).click();
  await (await cellOf(page, 1, 'Ankle range')).click();
  await page.keyboard.press('Delete');
  await chart.click();
  await expect.poll(() => notes.textContent()).toContain('morning: 9 values');
  await page.getByRole('button', { name: 'Back to the sheet' }).click();
  await (await cellOf(page, 1, 'Group')).click();
  await runCommand(page, 'Filter by');
  await page.getByRole('checkbox', { name: /evening/ }).check();
  await page.getByRole('button', { name: 'Apply filter' }).click();
  await chart.click();
  await expect.poll(() => notes.textContent()).not.toContain('morning');
  expect(await notes.textContent()).toContain('evening: 10 values');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => notes.textContent()).toContain('morning: 10 values');
  expect(faults).toEqual([]);
});

test('a chart goes out as SVG, PNG and CSV', async () => {
  const { page, faults } = watched;
  await make(page, 'Before and after', 'Knee to wall, tested twice', {
    Before: 'First test',
    After: 'After ten weeks',
  });
  for (const [button, start] of [
    ['Save as SVG', '<svg'],
    ['Save as PNG', '\u0089PNG'],
    ['Save as CSV', 'Name,First test (cm),After ten weeks (cm),More\r\nAbena,'],
  ] as const) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ]);
    const bytes = await readFile(await download.path());
    expect(bytes.toString('latin1').startsWith(start)).toBe(true);
    if (button === 'Save as SVG') {
      const text = bytes.toString('utf8');
      expect(text).toContain('After ten weeks (cm)');
      expect(text).not.toMatch(/var\(|color\(|light-dark|class=/);
    }
    if (button === 'Save as CSV') expect(bytes.toString('utf8').trim().split('\r\n')).toHaveLength(21);
  }
  expect(faults).toEqual([]);
});

test('the standard error may be a formula of the book, and a chart without points says what it needs', async () => {
  const { page, faults } = watched;
  await make(page, 'Left against right', 'Knee to wall, tested twice', { Left: 'Left', Right: 'Right' });
  expect(await page.locator('.chart-notes').textContent()).toContain('Give the standard error');
  await page.getByRole('button', { name: 'Change…' }).click();
  await field(page, 'Standard error of measurement').fill(
    'TEST.SEM.TRIALS(retest.test_one, retest.test_two)',
  );
  await page.getByRole('button', { name: 'Save changes' }).click();
  await expect
    .poll(() => page.locator('.chart-notes').textContent())
    .toContain('the minimal detectable change at 95 %');
  expect(await page.locator('.chart-legend').textContent()).toContain('may be measuring error');
  // All rows are hidden: the chart tells what it waits for.
  await page.getByRole('button', { name: 'Back to the sheet' }).click();
  await page.locator('.contents-item', { hasText: 'tested twice' }).click();
  await (await cellOf(page, 1, 'Left')).click();
  await runCommand(page, 'Filter by');
  await field(page, 'From').fill('900');
  await page.getByRole('button', { name: 'Apply filter' }).click();
  await page.locator('.contents-item', { hasText: 'Left, Right' }).click();
  expect(await page.locator('.chart-needs').textContent()).toContain('hides all of its rows');
  expect(await violations(page)).toEqual([]);
  expect(faults).toEqual([]);
});

test('a chart breaks no rule of WCAG 2.2 AA that can be checked by machine in the dark and on a phone', async () => {
  const { page, faults } = watched;
  await make(page, 'Before and after', 'Knee to wall, tested twice', {
    Before: 'First test',
    After: 'After ten weeks',
    Groups: 'Group',
  });
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violations(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect
    .poll(() => page.locator('.chart-svg').evaluate((svg) => svg.getBoundingClientRect().right))
    .toBeLessThanOrEqual(390);
  expect(await violations(page)).toEqual([]);
  expect(faults).toEqual([]);
});

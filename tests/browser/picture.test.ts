import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { runCommand } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { type Camera, drawn, HEIGHT, type Posture, type Seen, seen, WIDTH } from './side-picture.ts';

const watched = inBrowser({ viewport: { width: 1280, height: 800 } });
beforeAll(async () => {
  const { page } = watched;
  // In a book that has a sheet for the points, the panel leads there; another book is offered one.
  await page.getByRole('tab', { name: 'Picture' }).click();
  await page.getByRole('button', { name: 'Go to Observed squats' }).click();
  await page.getByRole('button', { name: 'Open a picture or film…' }).waitFor();
  await page.keyboard.press('Alt+b');
  await page.getByRole('button', { name: /^Start blank/ }).click();
  await page.getByRole('button', { name: 'Add a sheet for observed squats' }).click();
  await page.getByRole('button', { name: 'Open a picture or film…' }).waitFor();
});

const open = async (page: Page, name: string, buffer: Buffer, mimeType = 'image/png') => {
  await page.getByLabel('Picture or film', { exact: true }).setInputFiles({ name, mimeType, buffer });
};

/** Where a place on the picture is in the window. */
const spotOf = async (page: Page, [x, y]: readonly [number, number]) => {
  await page.locator('.picture-stage').scrollIntoViewIfNeeded();
  const box = (await page.locator('.picture-medium').boundingBox())!;
  return [box.x + (x / WIDTH) * box.width, box.y + (y / HEIGHT) * box.height] as const;
};

const choose = (page: Page, point: string) =>
  page
    .locator('.points')
    .getByRole('button', { name: new RegExp(`^${point}, (not )?placed`) })
    .click();

const placeByMouse = async (page: Page, points: Seen) => {
  for (const [name, at] of Object.entries(points)) {
    await choose(page, name);
    const [x, y] = await spotOf(page, at);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.up();
  }
};

const reading = async (page: Page, label: string): Promise<number> => {
  const text = (await page.locator('.readings tr', { hasText: label }).locator('td').textContent())!;
  return Number(text.replace('−', '-').replace(/[°\s].*$/, ''));
};

const straight: Camera = { distance: 400, height: 60, roll: 0, yaw: 0, looks: 'right' };
const postures: readonly (readonly [string, Posture, Camera])[] = [
  ['square from the side', { lean: 41, shin: 29, depth: -4 }, straight],
  ['rolled by 6°, facing left', { lean: 33, shin: 24, depth: 8 }, { ...straight, roll: 6, looks: 'left' }],
];

describe('a side picture, digitised by mouse', () => {
  test.each(postures)(
    '%s: lean, shin angle and depth come back within a degree',
    async (name, posture, camera) => {
      const { page, faults } = watched;
      const points = seen(posture, camera);
      await open(page, `${name}.png`, await drawn(page, points));
      await page.locator('.picture-medium').waitFor();
      if (!(await page.getByLabel('Camera distance (cm)').isVisible()))
        await page.getByText('Known length, camera and level line').click();
      await page.getByLabel('Camera distance (cm)').fill('400');
      await page.getByLabel('Known length nearer by (cm)').fill('70');
      await page.keyboard.press('Tab');
      await placeByMouse(page, points);
      // One pixel of the screen is some two of the picture: half a degree over the shortest line.
      expect(Math.abs((await reading(page, 'Observed lean')) - posture.lean)).toBeLessThanOrEqual(1);
      expect(Math.abs((await reading(page, 'Shin angle')) - posture.shin)).toBeLessThanOrEqual(1);
      expect(Math.abs((await reading(page, 'Depth')) - posture.depth)).toBeLessThanOrEqual(1);
      expect(Math.abs(await reading(page, 'Bar ahead'))).toBeLessThanOrEqual(1);
      expect(faults).toEqual([]);
    },
  );

  test('Save writes the points into the row, formulas follow, and one undo takes all of it back', async () => {
    const { page, faults } = watched;
    await page.getByRole('button', { name: 'Save to row 1' }).click();
    await page.getByText('Points saved in row 1.').waitFor();
    const cell = page.locator('.sheet-grid .ht_master tr[aria-rowindex="2"] td:visible');
    await expect.poll(async () => (await cell.allInnerTexts()).join(' | ')).toMatch(/33|32|34/);
    await runCommand(page, 'Undo');
    await expect.poll(async () => (await cell.allInnerTexts()).join(' | ')).not.toMatch(/3[234]/);
    expect(faults).toEqual([]);
  });
});

test('points are placed, nudged, undone and removed by keys alone', async () => {
  const { page, faults } = watched;
  const stage = page.getByRole('application');
  await choose(page, 'Hip');
  await page.getByRole('button', { name: 'Remove hip' }).click();
  await stage.focus();
  await page.keyboard.press('Enter');
  const before = await reading(page, 'Depth');
  for (let i = 0; i < 8; i++) await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => reading(page, 'Depth')).toBeLessThan(before);
  const lower = await reading(page, 'Depth');
  for (let i = 0; i < 8; i++) await page.keyboard.press('Control+z');
  await expect.poll(() => reading(page, 'Depth')).toBe(before);
  expect(lower).not.toBe(before);
  await page.keyboard.press('Delete');
  await page.getByText('Place hip.').first().waitFor();
  expect(faults).toEqual([]);
});

describe('files that are no picture', () => {
  const png = (width: number, height: number, cut = false): Buffer => {
    const chunk = (type: string, data: Buffer) => {
      const length = Buffer.alloc(4);
      length.writeUInt32BE(data.length);
      return Buffer.concat([length, Buffer.from(type), data, Buffer.alloc(4)]);
    };
    const head = Buffer.alloc(13);
    head.writeUInt32BE(width, 0);
    head.writeUInt32BE(height, 4);
    head.set([8, 2, 0, 0, 0], 8);
    const data = deflateSync(Buffer.alloc(cut ? 10 : 100));
    return Buffer.concat([
      Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
      chunk('IHDR', head),
      chunk('IDAT', data),
    ]);
  };
  test.each([
    ['notes.png', Buffer.from('this is text'), 'is not a picture or film'],
    [
      'drawing.svg',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
      'is a drawing (SVG)',
    ],
    ['huge.png', png(20_000, 10_000), '20000 × 10000 pixels'],
    ['cut.png', png(600, 400, true), 'cut short or damaged'],
    ['cut.mp4', Buffer.from('\0\0\0\x18ftypmp42 and nothing more'), 'cannot play'],
  ])('%s is refused with a sentence, and what was open stays', async (name, buffer, words) => {
    const { page, faults } = watched;
    await open(page, name, buffer, name.endsWith('.mp4') ? 'video/mp4' : 'image/png');
    await page.getByText(words).first().waitFor();
    expect(await page.locator('.picture-medium').count()).toBe(1);
    expect(faults.filter((fault) => !fault.includes('cut.mp4') && !/media|blob:/i.test(fault))).toEqual([]);
  });
});

test('a small copy saved in the book is shown after a reload, with the points where they were, and removed', async () => {
  const { page, faults } = watched;
  const points = seen(postures[0]![1], straight);
  // Twice as large in each direction and full of grain, so that the copy has to be smaller than the picture.
  const grainy = await page.evaluate(
    async ({ png, width, height }) => {
      const drawing = new Image();
      drawing.src = png;
      await drawing.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [width, height];
      const paint = canvas.getContext('2d')!;
      paint.drawImage(drawing, 0, 0, width, height);
      const all = paint.getImageData(0, 0, width, height);
      let chance = 1;
      for (let i = 0; i < all.data.length; i++) {
        chance = (chance * 48271) % 2147483647;
        if (i % 4 < 3) all.data[i]! += (chance % 90) - 45;
      }
      paint.putImageData(all, 0, 0);
      return canvas.toDataURL('image/jpeg', 0.9).split(',')[1]!;
    },
    {
      png: `data:image/png;base64,${(await drawn(page, points)).toString('base64')}`,
      width: 2 * WIDTH,
      height: 2 * HEIGHT,
    },
  );
  await open(page, 'copied.jpg', Buffer.from(grainy, 'base64'), 'image/jpeg');
  await page.getByRole('button', { name: 'Undo point' }).waitFor();
  await placeByMouse(page, points);
  const said = await reading(page, 'Observed lean');
  const save = page.getByRole('button', { name: 'Save a small copy in this book' });
  expect(await save.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Save to row 1' }).click();
  await expect.poll(() => save.isDisabled()).toBe(false);
  await page.getByLabel('Blur a rectangle').check();
  const [[x, y], [toX, toY]] = [await spotOf(page, [500, 40]), await spotOf(page, [760, 240])];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(toX, toY);
  await page.mouse.up();
  await save.click();
  await page.getByText(/^Copy saved in the book: \d+ kB\.$/).waitFor();
  await page.reload();
  await page.getByRole('tab', { name: 'Picture' }).click();
  const there = page.getByRole('button', { name: 'Go to Observed squats' });
  const told = page.getByText('The book has a small copy of this row’s picture');
  await there.or(told).first().waitFor();
  if (await there.isVisible()) await there.click();
  await told.waitFor();
  await expect.poll(() => page.locator('canvas.picture-medium').count()).toBe(1);
  // Same points on the copy: the same lean, and the copy covers the whole stage that the picture covered.
  expect(await reading(page, 'Observed lean')).toBe(said);
  const box = (await page.locator('.picture-medium').boundingBox())!;
  expect(box.width / box.height).toBeCloseTo(WIDTH / HEIGHT, 1);
  // The copy has fewer pixels; between neighbours there is grain, but none where the face was blurred.
  const { width, blurred, grain } = await page.evaluate(() => {
    const canvas = document.querySelector('canvas.picture-medium') as HTMLCanvasElement;
    const mean = (x: number, y: number) => {
      const { data } = canvas
        .getContext('2d')!
        .getImageData((x / 1200) * canvas.width, (y / 900) * canvas.height, 60, 1);
      let sum = 0;
      for (let i = 4; i < data.length; i += 4) sum += Math.abs(data[i]! - data[i - 4]!);
      return sum / 59;
    };
    return { width: canvas.width, blurred: mean(600, 120), grain: mean(100, 120) };
  });
  expect(width).toBeLessThan(2 * WIDTH);
  expect(blurred).toBeLessThan(grain / 3);
  await page.getByRole('button', { name: 'Remove the copy' }).click();
  await expect.poll(() => page.locator('.picture-medium').count()).toBe(0);
  await runCommand(page, 'Undo');
  await expect.poll(() => page.locator('canvas.picture-medium').count()).toBe(1);
  expect(faults).toEqual([]);
});

test('a film made here is stepped frame by frame, and each frame can be a row', async () => {
  const { page, faults } = watched;
  const film = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [320, 240];
    const paint = canvas.getContext('2d')!;
    const recorder = new MediaRecorder(canvas.captureStream(30), { mimeType: 'video/webm' });
    const parts: Blob[] = [];
    recorder.ondataavailable = ({ data }) => parts.push(data);
    const ended = new Promise((resolve) => {
      recorder.onstop = resolve;
    });
    recorder.start();
    for (let i = 0; i < 20; i++) {
      paint.fillStyle = '#fff';
      paint.fillRect(0, 0, 320, 240);
      paint.fillStyle = '#07a';
      paint.fillRect(10 * i, 100, 20, 20);
      await new Promise((resolve) => setTimeout(resolve, 40));
    }
    recorder.stop();
    await ended;
    const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
    let text = '';
    for (const byte of bytes) text += String.fromCharCode(byte);
    return btoa(text);
  });
  await open(page, 'squat.webm', Buffer.from(film, 'base64'), 'video/webm');
  await page.locator('video.picture-medium').waitFor();
  const time = async () => Number.parseFloat((await page.locator('.film-bar output').textContent())!);
  expect(await time()).toBe(0);
  for (let i = 1; i <= 6; i++) {
    await page.getByRole('button', { name: 'One frame forward' }).click();
    await expect.poll(time).toBeCloseTo(i / 30, 2);
  }
  await page.getByRole('button', { name: 'One frame back' }).click();
  await expect.poll(time).toBeCloseTo(5 / 30, 2);
  await page.getByRole('button', { name: 'Save as new row' }).click();
  await page.getByText('Points saved in a new row.').waitFor();
  expect(faults.filter((fault) => !/blob:/.test(fault))).toEqual([]);
});

test('the panel has no accessibility fault', async () => {
  expect(await violations(watched.page)).toEqual([]);
});

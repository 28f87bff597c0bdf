import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { executable } from './browser.ts';

/**
 * Draws the icons of the installed page from the mark: `node -e "import('vite').then(v=>v.runnerImport('./tests/browser/icons.ts'))"`.
 * Not a test.
 */
const root = join(import.meta.dirname, '..', '..');
const mark = await readFile(join(root, 'src/app/theme/mark.svg'), 'utf8');

/** Share of the side that the mark takes. A maskable icon may be cut to a circle of 80 % of the side. */
const icons = [
  { name: '192', size: 192, share: 0.72, round: 0.2 },
  { name: '512', size: 512, share: 0.72, round: 0.2 },
  { name: '512-maskable', size: 512, share: 0.54, round: 0 },
  { name: '180-touch', size: 180, share: 0.66, round: 0 },
];

const browser = await chromium.launch({ executablePath: await executable(), args: ['--no-sandbox'] });
for (const { name, size, share, round } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>
      body { margin: 0; background: transparent }
      div { display: grid; place-items: center; width: ${size}px; height: ${size}px; background: #191c1f; border-radius: ${round * size}px }
      svg { width: ${share * size}px; height: ${share * size}px }
    </style><div>${mark}</div>`,
  );
  await page.screenshot({ path: join(root, 'src/app/public/icons', `${name}.png`), omitBackground: true });
  await page.close();
}
await browser.close();

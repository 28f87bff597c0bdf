import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

/** Licences under which any package may come in. */
const free = new Set([
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'Unlicense',
  'MIT-0',
  'BSL-1.0',
]);

/** Packages with another licence, each let in by name, with the reason. */
const byName: Record<string, { readonly licence: string; readonly because: string }> = {
  hyperformula: { licence: 'GPL-3.0-only', because: 'the cell engine; our own code is GPL-3.0-or-later' },
  handsontable: {
    licence: 'SEE LICENSE IN LICENSE.txt',
    because: 'the grid, behind one adapter; see README',
  },
  lightningcss: { licence: 'MPL-2.0', because: 'part of the build only' },
  '@fontsource/barlow': { licence: 'OFL-1.1', because: 'a font file, used unchanged' },
  'axe-core': { licence: 'MPL-2.0', because: 'tests only' },
};

test('every package carries a licence of the allow list, or is let in by name with a reason', () => {
  const lock = JSON.parse(readFileSync(join(import.meta.dirname, '..', 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { license?: string }>;
  };
  const strangers = Object.entries(lock.packages)
    .filter(([path]) => path !== '')
    .map(([path, { license }]) => ({
      name: path.replace(/^.*node_modules\//, ''),
      license: license ?? 'none stated',
    }))
    .filter(({ name, license }) => {
      const choices = license
        .replace(/[()]/g, '')
        .split(' OR ')
        .map((choice) => choice.split(' AND '));
      const known = byName[name] ?? byName[name.replace(/^(lightningcss)-.*$/, '$1')];
      return !choices.some((parts) => parts.every((part) => free.has(part))) && known?.licence !== license;
    });
  expect(strangers).toEqual([]);
});

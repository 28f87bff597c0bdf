import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readReference } from './functions/reference.ts';

test('every reference file has a line in the manifest: what it holds, citation, digits and status', () => {
  const files = readdirSync(join(import.meta.dirname, 'reference')).filter((file) => file.endsWith('.csv'));
  const manifest = readReference('manifest.csv');
  expect(manifest.map(({ file }) => file).sort()).toEqual(
    files.filter((file) => file !== 'manifest.csv').sort(),
  );
  for (const line of manifest) {
    expect(line.what, line.file).not.toBe('');
    expect(line.citation, line.file).not.toBe('');
  }
});

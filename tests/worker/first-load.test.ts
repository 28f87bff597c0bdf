import { existsSync, readFileSync } from 'node:fs';
import { dirname, isAbsolute, join, relative } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');

/** Everything that a file loads before it runs: its imports and theirs, without types and without what is loaded later. */
function loadedBy(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const text = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  for (const [, what, from] of text.matchAll(/(?:^|\n)(?:import|export)\s+([^;]*?\sfrom\s+)?'([^']+)'/g)) {
    if (/^type\s/.test(what ?? '') || /^\{(\s*type\s[^,}]+,?)+\s*\}\s*from/.test(what ?? '')) continue;
    const to = join(dirname(file), from!);
    if (from!.startsWith('.') && existsSync(to)) loadedBy(to, seen);
    else if (!from!.startsWith('.')) seen.add(from!);
  }
  return seen;
}

test('the worker loads what reads files only with the first file', () => {
  const loaded = [...loadedBy(join(root, 'src/worker/worker.ts'))].map((path) =>
    isAbsolute(path) ? relative(root, path) : path,
  );
  // The search finds what it should: the worker does hold a session and the calculation.
  expect(loaded).toContain('src/session/session.ts');
  expect(loaded).toContain('src/calc/index.ts');
  // Renaming a column writes to import settings: their shape and what it points at are known from the start.
  // A setting that names an exercise knows the column of exercises by its heading: so are the words of headings. Both by a door
  // of their own, behind which is nothing else.
  expect(loaded.filter((path) => path.startsWith('src/intake/')).sort()).toEqual([
    'src/intake/detect/api.ts',
    'src/intake/detect/synonyms.ts',
    'src/intake/import-settings/api.ts',
    'src/intake/import-settings/recipe-references.ts',
    'src/intake/import-settings/recipe-shape.ts',
  ]);
  for (const library of ['papaparse', 'chardet', 'fflate', 'saxes']) expect(loaded).not.toContain(library);
});

test('charts and handouts are made by what is loaded when one is asked for', () => {
  const loaded = [...loadedBy(join(root, 'src/worker/worker.ts'))].map((path) => relative(root, path));
  // The list of a book's charts is told with the book, and what records point at follows every rename.
  expect(loaded.filter((path) => path.startsWith('src/session/charts/')).sort()).toEqual([
    'src/session/charts/chart-record.ts',
    'src/session/charts/chart-references.ts',
  ]);
  expect(loaded.filter((path) => path.startsWith('src/session/handouts/')).sort()).toEqual([
    'src/session/handouts/handout-references.ts',
    'src/session/handouts/handout-settings.ts',
  ]);
});

test('the task that reads files does load them, so that the search above can tell', () => {
  const loaded = [...loadedBy(join(root, 'src/session/imports/read-file.ts'))];
  expect(loaded).toContain('papaparse');
  expect(loaded).toContain('chardet');
});

test('what writes XLSX files is handed values and texts, and loads nothing that calculates', () => {
  const loaded = [...loadedBy(join(root, 'src/worker/xlsx-worker.ts'))].map((path) =>
    isAbsolute(path) ? relative(root, path) : path,
  );
  expect(loaded).toContain('src/session/xlsx/write.ts');
  expect(loaded).toContain('src/calc/a1/a1-formula.ts');
  expect(
    loaded.filter((path) => /^src\/calc\/(?!a1\/(index|a1-formula)\.ts)|^hyperformula|^numfmt/.test(path)),
  ).toEqual([]);
});

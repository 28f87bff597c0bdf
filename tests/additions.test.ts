/**
 * How many source files an addition touches. Counted on what is there: of each kind the record that the fewest files name or
 * import, since no list beside the records can name all but that one. DEVELOPERS.md says the same numbers.
 */
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { definitionFiles, registry } from '../functions/registry.ts';
import { builtIns } from '../src/calc/builtins/index.ts';
import { imports, root, sources } from './source-files.ts';

const texts = new Map(sources.map((file) => [file, readFileSync(join(root, file), 'utf8')]));

/** The files in which each name stands: as a text of its own or its first word, or at the start of a line of words. */
const named = new Map<string, Set<string>>();
for (const [file, text] of texts)
  for (const [, word, start] of text.matchAll(/['"`]([A-Za-z][\w.-]*)|^!?([A-Z][A-Z0-9._]*)\(/gm)) {
    const name = (word ?? start)!;
    named.set(name, (named.get(name) ?? new Set()).add(file));
  }

/** Files that name something, are one of these, or import one of them. */
const touching = (name: string, files: readonly string[] = []): readonly string[] => [
  ...new Set([
    ...files,
    ...(named.get(name) ?? []),
    ...imports.filter(({ to }) => files.includes(to)).map(({ from }) => from),
  ]),
];

const filesIn = (folder: string): readonly string[] =>
  sources.filter((file) => file.startsWith(`${folder}/`) && !file.slice(folder.length + 1).includes('/'));

/** The files of each record of a kind. */
const kinds: Readonly<Record<string, () => readonly (readonly string[])[]>> = {
  'domain function': () => {
    const fileOf = new Map(
      [...definitionFiles].map(([file, { name }]) => [name, `functions/${file.slice(2)}`]),
    );
    return [...registry.keys()].map((name) => touching(name, [fileOf.get(name)!]));
  },
  'built-in function': () =>
    [...new Set([...builtIns.values()].map(({ name }) => name))].map((name) => touching(name)),
  command: () =>
    filesIn('src/session/commands')
      .filter((file) => /\bid: '/.test(texts.get(file)!))
      .map((file) => touching(basename(file, '.ts'), [file])),
  edit: () =>
    filesIn('src/book/edits')
      .filter((file) => imports.some(({ from, to }) => from === 'src/book/apply.ts' && to === file))
      .map((file) => touching(basename(file, '.ts'), [file])),
};

test.each(Object.entries(kinds))(
  'DEVELOPERS.md says how many source files a new %s touches',
  (kind, records) => {
    const all = records();
    expect(all.length).toBeGreaterThan(5);
    const fewest = all.reduce((least, one) => (one.length < least.length ? one : least));
    const line = new RegExp(`^\\| ${kind} \\| (\\d+) \\|`, 'm').exec(
      readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'),
    );
    expect([kind, Number(line?.[1]), fewest]).toEqual([kind, fewest.length, fewest]);
  },
);

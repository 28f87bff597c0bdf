import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { pages } from '../../functions/core/pages/index.ts';
import { registry } from '../../functions/registry.ts';
import { safe } from '../../src/cli/reference/html.ts';
import { referenceFiles } from '../../src/cli/reference/reference-files.ts';

const files = referenceFiles();
const byName = new Map(files.map(({ name, text }) => [name, text]));
const ids = (text: string) => [...text.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]!);

describe('npm run reference', () => {
  test.each(files)('docs/$name is current; otherwise run npm run reference', ({ name, text }) => {
    const path = join(import.meta.dirname, '../../docs', name);
    expect(existsSync(path), `docs/${name} is missing`).toBe(true);
    // One line each, so that a difference is shown by its line and not by the whole file.
    const [written, made] = [readFileSync(path, 'utf8').split('\n'), text.split('\n')];
    const first = made.findIndex((line, i) => line !== written[i]);
    if (first >= 0 || written.length !== made.length)
      expect.fail(`docs/${name} differs in line ${first + 1}; run npm run reference`);
  });

  test.each(files)('$name is one file without scripts, and fetches nothing but its pictures', ({ text }) => {
    expect(text).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(text).not.toMatch(/<script|<link|<iframe|\son\w+=|https?:|@import|url\(/i);
    // Pictures stand beside the guides, each with words for those who do not see it.
    for (const [image, name] of text.matchAll(/<img src="([^"]*)"[^>]*>/g)) {
      expect(
        existsSync(join(import.meta.dirname, '../../docs', name!)),
        `${name} is missing: npm run pictures`,
      ).toBe(true);
      expect(image).toMatch(/^<img src="pictures\/guide-[a-z-]+\.png" alt="[^"]{20,}"/);
    }
    expect(text.match(/<h1>/g)).toHaveLength(1);
  });

  test.each(files)('$name has each address once, and all its links lead somewhere', ({ name, text }) => {
    expect(new Set(ids(text)).size).toBe(ids(text).length);
    for (const [, file, id] of text.matchAll(/href="([^"#]*)(?:#([^"]*))?"/g)) {
      const target = byName.get(file || name);
      expect(target, `${name} links to ${file}`).toBeDefined();
      if (id) expect(ids(target!), `${name} links to ${file}#${id}`).toContain(id);
    }
  });

  test('every function stands in the reference, with its status words', () => {
    const text = byName.get('reference.html')!;
    for (const [name, definition] of registry) {
      expect(text).toContain(`>${name}</h3>`);
      for (const { status } of definition.sources) expect(text).toContain(`[${status}]`);
    }
  });

  test('the pages name only functions that exist', () => {
    const named = pages.flatMap(({ sections }) => sections.flatMap(({ functions = [] }) => functions));
    expect(named.filter((name) => !registry.has(name))).toEqual([]);
  });

  test('known limits says what the model leaves out, and gives the cautions', () => {
    const text = byName.get('known-limits.html')!;
    for (const said of [
      /Static: nothing moves/,
      /Two-dimensional/,
      /arms stay at the trunk/,
      /whole ankle range is used/,
      /never validated/,
      /geometric ceiling/,
      /Sato 2012.*Monteiro 2022.*Legg 2017.*Lee 2019/,
      /not for diagnosis/,
      /licensed clinician/,
      /safety pins or spotters/,
      /testing minors/,
      /not shown to predict or prevent injury/,
    ])
      expect(text).toMatch(said);
  });

  test('text never becomes markup', () => {
    expect(safe('<b onclick="x">&\'')).toBe('&#60;b onclick=&#34;x&#34;&#62;&#38;&#39;');
  });
});

/** Functions, constants and classes that a source file exports and no other source file imports: dead, or there for tests alone. */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root, sources } from './source-files.ts';

/** As `path name`, sorted. Files whose default export is registered by their folder (`functions/`) export no more than that. */
export function unusedExports(): readonly string[] {
  const texts = new Map(sources.map((file) => [file, readFileSync(join(root, file), 'utf8')]));
  const used = new Set<string>();
  const whole = new Set<string>();
  for (const [from, text] of texts) {
    const resolved = (to: string): string => relative(root, join(root, from, '..', to)).replaceAll('\\', '/');
    for (const [, names, to] of text.matchAll(
      /(?:import|export)\s(?:type\s)?(?:\w+,\s*)?\{([^}]*)\}\s*from\s+'(\.[^']+)'/g,
    ))
      for (const name of names!.split(',').map(
        (one) =>
          one
            .trim()
            .replace(/^type /, '')
            .split(' as ')[0]!,
      ))
        if (name) used.add(`${resolved(to!)} ${name}`);
    for (const [, to] of text.matchAll(
      /(?:import|export)\s(?:type\s)?\*(?:\s+as\s+\w+)?\s+from\s+'(\.[^']+)'/g,
    ))
      whole.add(resolved(to!));
    // What is loaded later is taken apart where it arrives: any of its names may be.
    for (const [, to] of text.matchAll(/import\(\s*'(\.[^']+)'/g)) whole.add(resolved(to!));
  }
  return [...texts]
    .filter(([file]) => !whole.has(file))
    .flatMap(([file, text]) =>
      [...text.matchAll(/^export (?:async )?(?:function\*?|const|class|abstract class|let) (\w+)/gm)]
        .map(([, name]) => `${file} ${name}`)
        .filter((one) => !used.has(one)),
    )
    .sort();
}

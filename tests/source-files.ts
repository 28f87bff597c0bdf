/** The project's own source files and who imports whom, types included; for the tests about the house. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

export const root = join(import.meta.dirname, '..');

export interface Import {
  readonly from: string;
  /** A file of the project, or the name of a package. */
  readonly to: string;
}

/** All source files, as paths from the root. */
export const sources: readonly string[] = ['functions', 'src'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/')),
);

export const imports: readonly Import[] = sources.flatMap((from) => {
  const text = readFileSync(join(root, from), 'utf8');
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s[^;]*?from\s+'([^']+)'|import\(\s*'([^']+)'|(?:^|\n)import\s+'([^']+)'/g,
  );
  return [...found].map((match) => {
    const to = (match[1] ?? match[2] ?? match[3])!;
    return {
      from,
      to: to.startsWith('.') ? relative(root, join(root, from, '..', to)).replaceAll('\\', '/') : to,
    };
  });
});

export const layerOf = (path: string): string | undefined =>
  path.startsWith('functions/') ? 'functions' : /^src\/([a-z]+)\//.exec(path)?.[1];

/** The room of a layer that a file is in: a folder with all that is in it; a file beside the folders is on its own. */
export const roomOf = (path: string): string =>
  /^(functions\/[^/]+|src\/[^/]+\/[^/]+)\//.exec(path)?.[1] ?? path;

/** Groups of nodes that lead back to themselves, each sorted: strongly connected parts of more than one node (Tarjan 1972). */
export function circles(edges: Iterable<readonly [from: string, to: string]>): string[][] {
  const next = new Map<string, Set<string>>();
  for (const [from, to] of edges) {
    if (!next.has(from)) next.set(from, new Set());
    if (from !== to) next.get(from)!.add(to);
  }
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (node: string): void => {
    index.set(node, index.size);
    low.set(node, index.get(node)!);
    open.push(node);
    for (const to of next.get(node) ?? []) {
      if (!index.has(to)) visit(to);
      if (open.includes(to)) low.set(node, Math.min(low.get(node)!, low.get(to)!));
    }
    if (low.get(node) !== index.get(node)) return;
    const part = open.splice(open.lastIndexOf(node));
    if (part.length > 1) found.push(part.sort());
  };
  for (const node of next.keys()) if (!index.has(node)) visit(node);
  return found;
}

// What a person reads, taken out of the files that say it: sentences and labels of sources, books and documents.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseSync } from 'vite';

const root = join(import.meta.dirname, '../..');

export interface Said {
  /** File and line, or file and path inside a book. */
  readonly where: string;
  readonly text: string;
}

interface Node {
  readonly type?: string;
  readonly start?: number;
  readonly [key: string]: unknown;
}

/** Texts with a blank between words, or one word with a capital: codes and names of columns are neither. */
const isRead = (text: string): boolean => /\p{L}[,.:;”’]? +[\p{L}\d…(“*`<]|^\p{Lu}\p{Ll}/u.test(text);

/** Words that people may type to find something are theirs, whatever they are; imports and types are for the compiler. */
const isSkipped = (node: Node): boolean =>
  /^(Import|ExportAll|TSType|TSInterface|TSLiteral)/.test(node.type ?? '') ||
  (node.type === 'Property' && (node.key as { name?: string }).name === 'searchWords');

function textOf(node: Node): string | undefined {
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node.type === 'JSXText') return String(node.value).replace(/\s+/g, ' ').trim();
  if (node.type !== 'TemplateLiteral') return undefined;
  const pieces = node.quasis as readonly { readonly value: { readonly cooked: string } }[];
  return pieces.map(({ value }) => value.cooked).join('…');
}

/** Sentences and labels of a source file. */
export function saidInSource(where: string, source: string): readonly Said[] {
  const said: Said[] = [];
  const walk = (node: unknown): void => {
    if (node === null || typeof node !== 'object' || isSkipped(node as Node)) return;
    const text = textOf(node as Node);
    if (text !== undefined && isRead(text)) {
      const line = source.slice(0, (node as Node).start).split('\n').length;
      said.push({ where: `${where}:${line}`, text });
    }
    for (const [key, inner] of Object.entries(node)) if (key !== 'type') walk(inner);
  };
  walk(parseSync(where, source).program);
  return said;
}

const notRead = new Set(['formula', 'when', 'hash', 'color']);

/** Labels, notes, headings, sentences and texts of cells of a book. */
export function saidInBook(where: string, book: string): readonly Said[] {
  const said: Said[] = [];
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'string') {
      if (isRead(value)) said.push({ where: `${where} ${path}`, text: value });
    } else if (value !== null && typeof value === 'object')
      for (const [key, inner] of Object.entries(value)) if (!notRead.has(key)) walk(inner, `${path}/${key}`);
  };
  walk(JSON.parse(book), '');
  return said;
}

const named: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };

/** Paragraphs of a document; style sheets and lines to type are left out. */
export function saidInDocument(where: string, document: string): readonly Said[] {
  const text = where.endsWith('.html')
    ? document
        .replace(/<(style|pre|title)[^>]*>[\s\S]*?<\/\1>/g, '')
        .replace(/<\/(p|li|h\d|td|th|caption|summary)>/g, '\n\n')
        .replace(/<[^>]+>/g, '')
        .replace(/&(\w+);/g, (whole, name: string) => named[name] ?? whole)
    : document.replace(/```[\s\S]*?```/g, '');
  return text
    .split(/\n\s*\n/)
    .map((paragraph, i) => ({ where: `${where} ¶${i + 1}`, text: paragraph.replace(/\s+/g, ' ').trim() }))
    .filter(({ text }) => text !== '');
}

function filesIn(path: string): readonly string[] {
  const whole = join(root, path);
  if (statSync(whole).isFile()) return [path];
  return readdirSync(whole, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
}

/** Everything that is said in files and folders, by what kind of file each is. */
export const saidIn = (...paths: readonly string[]): readonly Said[] =>
  paths.flatMap(filesIn).flatMap((path) => {
    const text = () => readFileSync(join(root, path), 'utf8');
    if (/\.tsx?$/.test(path)) return saidInSource(path, text());
    if (path.endsWith('.leverbook.json')) return saidInBook(path, text());
    if (/\.(md|html)$/.test(path)) return saidInDocument(path, text());
    if (path.endsWith('.csv'))
      return text()
        .split('\n', 3)
        .map((line, i) => ({ where: `${path}:${i + 1}`, text: line }));
    return [];
  });

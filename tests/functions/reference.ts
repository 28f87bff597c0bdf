import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '../reference');

/** The lines of a reference file as records by heading. Quoted fields may hold commas and doubled quotes. */
export function readReference(file: string): readonly Readonly<Record<string, string>>[] {
  const [headings, ...lines] = parse(readFileSync(join(folder, file), 'utf8'));
  return lines.map((cells) => Object.fromEntries(headings!.map((name, i) => [name, cells[i] ?? ''])));
}

/** A column of a published data set as numbers. */
export const readColumn = (set: string, column: string): number[] =>
  readReference(`${set}.csv`).map((line) => {
    const value = line[column];
    if (value === undefined) throw new Error(`${set}.csv has no column ${column}.`);
    return Number(value);
  });

export const readBlock = (set: string): number[][] =>
  readReference(`${set}.csv`).map((line) => Object.values(line).map(Number));

function parse(text: string): string[][] {
  const rows: string[][] = [];
  for (const line of text.trimEnd().split('\n')) {
    const cells: string[] = [];
    for (const [, quoted, plain] of line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g))
      cells.push(quoted === undefined ? plain! : quoted.replaceAll('""', '"'));
    rows.push(cells);
  }
  return rows;
}

/** True when a value agrees with a printed one: "1e-9 rel", "0.05 abs" or "exact". */
export function agrees(value: number, expected: number, tolerance: string): boolean {
  if (tolerance === 'exact') return value === expected;
  const [size, kind] = tolerance.split(' ');
  return Math.abs(value - expected) <= Number(size) * (kind === 'rel' ? Math.abs(expected) : 1);
}

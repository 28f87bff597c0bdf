import type { Command } from '../../../src/session/commands/index.ts';

/** One thing that is done to the book under test. */
export type Step =
  | Command
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }
  /** Reads a table file and brings it in. */
  | { readonly do: 'import'; readonly text: string };

/** How a file is brought in, and when: the same for the book under test and its twin. */
export const decisions = { sheet: 'measured', mode: 'replace' } as const;
export const NOW = '2025-06-01T12:00:00.000Z';

export const ROWS = 3_000;
const FIRST = 20;

/** The book that all the work is done on. */
export const beginning: readonly Command[] = [
  { do: 'set-title', title: 'Under test' },
  {
    do: 'add-sheet',
    label: 'Log',
    rows: ROWS,
    columns: [
      { label: 'a', kind: 'number' },
      { label: 'b', kind: 'number' },
      { label: 'word', kind: 'text' },
      { label: 'total', kind: 'number', formula: 'a * 2 + b' },
      { label: 'lean', kind: 'number', formula: 'LEAN.PARALLEL(35 + a / 100, 42, 50, 38)' },
      { label: 'share', kind: 'number', formula: 'total / SUM(log.total)' },
    ],
  },
  {
    do: 'add-sheet',
    label: 'Measured',
    rows: 2,
    columns: [
      { label: 'lifter', kind: 'text' },
      { label: 'femur', kind: 'number' },
      { label: 'seen', kind: 'date' },
    ],
  },
  { do: 'add-sheet', label: 'Summary', rows: 5, columns: [{ label: 'result', kind: 'number' }] },
  {
    do: 'set-cells',
    sheet: 'summary',
    row: 0,
    columns: ['result'],
    texts: [['=SUM(log.a)'], ['=A1 / ROWS(log.a)'], ['=COUNT(log.lean)']],
  },
];

/** A number from 0 to `below`, the same for the same seed and step. */
function chance(seed: number, step: number, salt: number, below: number): number {
  let h = (seed ^ Math.imul(step + 1, 0x9e3779b1) ^ Math.imul(salt + 1, 0x85ebca6b)) >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d) >>> 0;
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b) >>> 0;
  return ((h ^ (h >>> 16)) >>> 0) % below;
}

/**
 * Step `k` of the work: edits, large pastes, new formulas, rows and columns that come and go, undo and redo. It depends on
 * nothing but its arguments. Just after a start there is no undo: what it would take back may lie before a snapshot.
 */
export function stepAt(seed: number, k: number, from: number): Step {
  const n = (salt: number, below: number): number => chance(seed, k, salt, below);
  const edit: Command = {
    do: 'set-cells',
    sheet: 'log',
    row: n(1, ROWS - 40),
    columns: ['a', 'b', 'word'].slice(0, 1 + n(2, 3)),
    texts: Array.from({ length: 1 + n(3, 20) }, (_, i) => [
      String(n(i, 1000) / 10),
      String(i),
      `word ${k}`,
    ]).map((row) => row.slice(0, 1 + n(2, 3))),
  };
  const large: Command = {
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['a', 'b', 'word'],
    texts: Array.from({ length: ROWS - 50 }, (_, i) => [String((i * (k + 7)) % 977), String(i), `${k}/${i}`]),
  };
  const formula: Command = {
    do: 'set-formula',
    sheet: 'log',
    column: 'total',
    formula: `a * ${1 + n(5, 9)} + b`,
  };
  const others: readonly Step[] = [
    large,
    formula,
    { do: 'add-rows', sheet: 'log', row: n(6, 100), count: 7 },
    { do: 'remove-rows', sheet: 'log', row: n(7, 100), count: 7 },
    {
      do: 'add-column',
      sheet: 'log',
      column: { name: 'extra', label: 'extra', kind: 'number', formula: 'a - b' },
    },
    { do: 'remove-column', sheet: 'log', column: 'extra' },
    { do: 'sort-rows', sheet: 'log', by: [{ column: 'a' }] },
    { do: 'set-title', title: `Under test ${k}` },
    {
      do: 'import',
      text: `lifter,femur,seen\n${Array.from({ length: 800 }, (_, i) => `L${i % 90},${38 + ((i * k) % 80) / 10},2025-0${1 + (i % 9)}-11`).join('\n')}\n`,
    },
  ];
  const which = n(0, 24);
  if (which < others.length) return others[which]!;
  if (k - from > FIRST && which === 10) return { do: 'undo' };
  if (k - from > FIRST && which === 11) return { do: 'redo' };
  return edit;
}

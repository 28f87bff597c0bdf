import type { Choices, ColumnFinding, Finding, Progress, Shape } from '../api.ts';
import { type Note, note, sentence } from '../sentences/index.ts';
import { findColumn } from './columns.ts';
import { habitsOf } from './find-marks.ts';
import type { LayoutFindings } from './layout.ts';
import { findRowIsSet } from './log.ts';
import { ColumnLook } from './look.ts';
import { findRepeats, type Repeats, reshaper } from './reshape.ts';
import { withUnitColumns } from './unit-columns.ts';

/** The rows as they will be placed, with their headings. */
export interface Table {
  readonly rows: readonly (readonly string[])[];
  readonly headings: readonly string[];
  /** Words of the line of units, by column. */
  readonly units: readonly (string | null)[];
}

/** Brings the rows into a shape. @throws IntakeRefusal when the headings do not allow it */
export function tableOf(
  body: readonly (readonly string[])[],
  layout: LayoutFindings,
  shape: Shape | null,
  name: string,
): Table {
  const units = layout.units ?? [];
  if (shape === null) return { rows: body, headings: layout.headings, units };
  const shaper = reshaper(shape, layout.headings, name);
  for (const row of body) if (row.length <= layout.headings.length) shaper.put(row, 0);
  shaper.end();
  const { rows } = shaper.drain();
  return { rows, headings: shaper.headings, units: shaper.from.map((at) => units[at] ?? null) };
}

/** A wide shape keeps the columns in the order in which they were found. */
export const withColumns = (shape: Shape | null, headings: readonly string[]): Shape | null =>
  shape?.to === 'wide' ? { ...shape, columns: headings.slice(shape.by.length) } : shape;

export function findShape(headings: readonly string[], choices: Choices): Finding<Shape | null> {
  const repeats = findRepeats(headings);
  const proposal: Shape[] = repeats ? [{ to: 'long', name: repeats.name }] : [];
  if (choices.shape !== undefined)
    return { value: choices.shape, certainty: 'sure', because: note('chosen'), others: [null, ...proposal] };
  return {
    value: null,
    certainty: repeats && repeats.parts.length > 2 ? 'doubtful' : 'likely',
    because: repeats ? repeatsNote(repeats) : note('as-it-is'),
    others: proposal,
  };
}

const repeatsNote = (repeats: Repeats): Note =>
  note('repeats', {
    count: repeats.parts.reduce((n, part) => n + part.at.filter((i) => i >= 0).length, 0),
    example: repeats.parts
      .slice(0, 3)
      .map((part) => part.name)
      .join(', '),
    name: repeats.name,
  });

export interface Looked {
  readonly columns: readonly ColumnFinding[];
  readonly looks: readonly ColumnLook[];
}

/** Looks at every cell and says what each column holds. */
export function* lookingAtColumns(
  table: Table,
  delimiter: string,
  choices: Choices,
): Generator<Progress, Looked> {
  const { rows, headings, units } = table;
  const looks: ColumnLook[] = [];
  const texts: ReadonlyMap<string, number>[] = [];
  const fitting = rows.filter((row) => row.length <= headings.length);
  for (let i = 0; i < headings.length; i++) {
    const look = new ColumnLook();
    // Most columns hold few different texts: each is looked at once.
    const counts = new Map<string, number>();
    for (const row of fitting) {
      const cell = row[i] ?? '';
      counts.set(cell, (counts.get(cell) ?? 0) + 1);
    }
    for (const [cell, count] of counts) look.see(cell, count);
    looks.push(look);
    texts.push(counts);
    yield { done: i, total: headings.length, about: 'looking at the columns' };
  }
  const habits = habitsOf(looks, choices, delimiter);
  const columns = looks.map((look, i) =>
    findColumn(i, headings[i]!, units[i] ?? null, look, habits, choices),
  );
  return { columns: withOwnLabels(withUnitColumns(columns, texts, choices)), looks };
}

/** Blank headings get a number, and headings that come again get one behind them, so that none is mistaken for another. */
function withOwnLabels(columns: readonly ColumnFinding[]): ColumnFinding[] {
  const taken = new Set<string>();
  return columns.map((column) => {
    const wanted = column.label === '' ? `Column ${column.index + 1}` : column.label;
    let label = wanted;
    for (let i = 2; taken.has(label.toLowerCase()); i++) label = `${wanted} ${i}`;
    taken.add(label.toLowerCase());
    return { ...column, label };
  });
}

/** What should be known about headings and columns before anything is placed. */
export function tableNotes(
  table: Table,
  { columns, looks }: Looked,
  hasHeadings: boolean,
  choices: Choices,
): Note[] {
  const notes: Note[] = [];
  const places = new Map<string, number[]>();
  table.headings.forEach((heading, i) => {
    const key = heading.toLowerCase();
    if (heading !== '') places.set(key, [...(places.get(key) ?? []), i]);
  });
  for (const at of places.values())
    if (at.length > 1)
      notes.push(
        note('duplicate-heading', {
          heading: table.headings[at[0]!]!,
          count: at.length,
          names: at.map((i) => `"${columns[i]!.label}"`).join(', '),
        }),
      );
  columns.forEach((column, i) => {
    if (hasHeadings && column.heading === '' && column.filled > 0)
      notes.push(note('blank-heading', { position: i + 1, label: column.label }));
    const { dates } = looks[i]!;
    const zones = dates.of('zone');
    if (column.kind.value === 'date' && zones > 0)
      notes.push(
        note('time-zones', {
          heading: column.heading || column.label,
          count: zones,
          example: dates.example('zone')!,
        }),
      );
    for (const about of ['decimal', 'dateOrder', 'clock', 'unitsOf'] as const) {
      const doubt = column[about];
      if (doubt?.certainty !== 'doubtful' || (about === 'decimal' && column.kind.value !== 'number'))
        continue;
      const why = sentence(doubt.because);
      notes.push(note('column-doubt', { heading: column.heading || column.label, about, why }));
    }
  });
  const sets = findRowIsSet(columns, choices);
  if (sets?.finding.certainty === 'doubtful')
    notes.push(
      note('column-doubt', {
        heading: sets.heading,
        about: 'rowIsSet',
        why: sentence(sets.finding.because),
      }),
    );
  return notes;
}

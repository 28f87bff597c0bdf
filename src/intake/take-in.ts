import type { CellBlock } from '../book/cells.ts';
import type { Edit } from '../book/edit.ts';
import type { Column, Sheet } from '../book/model.ts';
import { nameKey, properName } from '../book/names.ts';
import { dimensions } from '../units/dimension.ts';
import { displayUnitOf, unitFromWord } from '../units/unit.ts';
import type {
  ColumnFinding,
  ColumnReport,
  Findings,
  HeldRow,
  IntakeOptions,
  PlausibleColumn,
  Progress,
  Provenance,
  Report,
  Target,
} from './api.ts';
import { decodePieces } from './decode.ts';
import { type Inspected, inspecting } from './inspect.ts';
import { DateLane } from './lanes.ts';
import { listed, type Mapping, type Match, mapByHeadings, mapByRecipe } from './map.ts';
import { parseRows } from './parse.ts';
import { columnNotes, type Placed, Placing } from './place.ts';
import { type CellChange, type Mode, type Plan, planRows } from './plan.ts';
import { type Recipe, recipeJson } from './recipe.ts';
import { cellWords } from './rows-of-sheet.ts';
import { IntakeRefusal, type Note, note } from './sentences.ts';
import { headingKey, synonymIndex, synonyms } from './synonyms.ts';

export interface TakeOptions extends IntakeOptions {
  readonly recipe?: Recipe;
  /** What becomes of rows that stand in the sheet: the recipe's mode, else append. */
  readonly mode?: Mode;
  readonly key?: readonly string[];
  /** Headings that match no column: left out, or made new columns (the default). */
  readonly rest?: 'ignore' | 'add';
}

/** Everything that came of a file. Nothing has been written: that is done by applying `edits` together. */
export interface Taken {
  readonly edits: readonly Edit[];
  readonly report: Report;
  readonly heldRows: readonly HeldRow[];
  readonly provenance: Provenance;
  readonly findings: Findings;
  /** How to take the next file of this kind in. */
  readonly recipe: Recipe;
  readonly recipeKey: string;
  /** What an update would change, the first of them. */
  readonly changes: readonly CellChange[];
  /** Close spellings that were not taken. */
  readonly proposals: readonly { readonly heading: string; readonly column: string }[];
}

/** Brings a file's rows to a sheet, as edits. @throws IntakeRefusal */
export function* takingIn(
  bytes: Uint8Array,
  target: Target,
  options: TakeOptions = {},
): Generator<Progress, Taken> {
  const recipe = options.recipe ?? null;
  const inspected = yield* inspecting(bytes, {
    ...options,
    choices: { ...(recipe?.read ?? {}), ...(options.choices ?? {}) },
  });
  const { findings } = inspected;
  const sheet = target.sheet ?? newSheet(target, findings);
  const chosen = chooseColumns(sheet, target, inspected, options);
  const placing = new Placing(inspected, chosen.matches, {
    recipe,
    now: options.now ?? '',
    boundsOf: boundsFor(options),
    expected: expectedRows(findings),
  });
  let done = 0;
  const pieces = decodePieces(bytes, findings.encoding.value);
  for (const batch of parseRows(pieces, inspected.dialect)) {
    placing.take(batch);
    done += batch.rows.length;
    yield {
      done: Math.min(1, done / Math.max(1, expectedRows(findings))) * bytes.length,
      total: bytes.length,
      about: 'placing rows',
    };
  }
  placing.end();
  for (const { lane } of placing.placed) if (lane instanceof DateLane) lane.settle();
  const notes = placing.placed.map((p) => columnNotes(p, (row) => placing.lines[row]!));
  const filled = placing.placed.map(({ match, lane }) => ({ column: match.column, cells: lane.finish() }));
  const mode = options.mode ?? recipe?.mode ?? 'append';
  const plan = planRows({
    sheet,
    newColumns: chosen.newColumns,
    filled,
    rows: placing.rows,
    mode,
    key: options.key ?? recipe?.key ?? [],
    rawOf: (row) => ({
      line: placing.lines[row]!,
      raw: rawText(
        filled.map((f) => f.cells),
        row,
      ),
    }),
  });
  const report = reportOf(placing, plan, chosen, notes, findings);
  const provenance: Provenance = {
    file: findings.name,
    size: findings.size,
    hash: findings.hash,
    time: options.now ?? '',
    sheet: sheet.name,
    recipe: recipe?.title ?? null,
    mode,
    rows: report.rows,
    cells: report.cells,
  };
  const made = recipe ?? recipeOf(sheet, chosen, findings, mode, options.key);
  return {
    edits: [...(target.sheet ? [] : sheetEdits(sheet, target)), ...plan.edits],
    report,
    heldRows: [...placing.heldRows, ...plan.held].sort((a, b) => a.line - b.line),
    provenance,
    findings,
    recipe: made,
    recipeKey: properName(made.title),
    changes: plan.changes,
    proposals: chosen.proposals.map((p) => ({ heading: p.source.heading, column: p.column.name })),
  };
}

interface Chosen extends Mapping {
  readonly newColumns: readonly Column[];
  readonly isNew: ReadonlySet<string>;
  readonly computed: readonly Match[];
  readonly leftOut: readonly ColumnFinding[];
}

/** Which column of the file goes where; makes the columns that are new. */
function chooseColumns(sheet: Sheet, target: Target, inspected: Inspected, options: TakeOptions): Chosen {
  const { findings } = inspected;
  const sources = findings.columns.filter((c) => c.heading !== '' || c.filled > 0);
  const mapping = options.recipe
    ? mapByRecipe(sources, sheet.columns, options.recipe, findings.name)
    : mapByHeadings(sources, sheet.columns);
  // A computed column keeps its formula unless a recipe says that the file goes over it.
  const computed = mapping.matches.filter((m) => m.column.formula !== undefined && m.by !== 'recipe');
  const matches = mapping.matches.filter((m) => !computed.includes(m));
  const rest = options.recipe ? (options.recipe.rest ?? 'ignore') : (options.rest ?? 'add');
  if (matches.length === 0 && target.sheet && sheet.columns.length > 0 && options.rest !== 'add')
    throw new IntakeRefusal('no-matching-column', {
      name: findings.name,
      count: sources.length,
      headings: listed(sources.map((s) => s.heading)),
      sheet: sheet.name,
      columns: listed(sheet.columns.map((c) => c.name)),
    });
  const added = rest === 'add' ? mapping.unmatched : [];
  const taken = new Set(sheet.columns.map((c) => c.name.toLowerCase()));
  const newMatches = added.map((source): Match => {
    const column = newColumn(
      source,
      (name) => taken.has(name.toLowerCase()) || (options.reserved?.(name) ?? false),
    );
    taken.add(column.name.toLowerCase());
    return { source, column, by: 'name', how: null };
  });
  return {
    matches: [...matches, ...newMatches].sort((a, b) => a.source.index - b.source.index),
    unmatched: mapping.unmatched,
    proposals: mapping.proposals,
    newColumns: newMatches.map((m) => m.column),
    isNew: new Set(newMatches.map((m) => m.column.id)),
    computed,
    leftOut: rest === 'add' ? [] : mapping.unmatched,
  };
}

function newColumn(source: ColumnFinding, taken: (name: string) => boolean): Column {
  const name = properName(source.label, taken);
  const kind = source.kind.value;
  const unit = source.unit.value === null ? undefined : unitFromWord(source.unit.value);
  const dimension = kind === 'number' ? (source.dimension ?? undefined) : undefined;
  return {
    id: name,
    name,
    label: source.label,
    kind,
    ...(dimension ? { dimension, unit: unit?.unit ?? dimensions[dimension] } : {}),
  };
}

function newSheet(target: Target, findings: Findings): Sheet {
  const label =
    target.label ?? (findings.name.replace(/^.*[\\/]/, '').replace(/\.[^.]{1,5}$/, '') || 'Sheet');
  const name = properName(
    label,
    (n) => target.book?.sheets.some((s) => nameKey(s.name) === nameKey(n)) ?? false,
  );
  return { id: name, name, label, purpose: 'gathered', columns: [], rows: 0, cells: new Map() };
}

const sheetEdits = ({ id, name, label, purpose }: Sheet, { book }: Target): Edit[] => [
  {
    do: 'add-sheet',
    index: book?.sheets.length ?? 0,
    sheet: { id, name, label, purpose, rows: 0, columns: [] },
  },
];

/** Bounds of a column by its name, its label, or a word of the trade for them. */
function boundsFor({ plausibility }: TakeOptions): (column: Column) => PlausibleColumn | null {
  const lines = synonymIndex(synonyms);
  const known = new Map<string, PlausibleColumn>();
  for (const p of plausibility?.columns ?? [])
    for (const name of p.names) {
      const key = headingKey(name);
      known.set(key, p);
      const line = lines.get(key);
      for (const other of line === undefined ? [] : synonyms[line]!)
        if (!known.has(other)) known.set(other, p);
    }
  return (column) => {
    const found = known.get(headingKey(column.name)) ?? known.get(headingKey(column.label));
    return found && (found.dimension === undefined || found.dimension === column.dimension) ? found : null;
  };
}

/** Rows to make room for: all of a short file, an estimate of a long one. */
const expectedRows = (f: Findings): number =>
  f.partial ? Math.ceil((f.rows / (1024 * 1024)) * f.size * 1.05) : f.rows;

/** A placed row as text, for one that turned out to have no place. */
function rawText(blocks: readonly CellBlock[], row: number): string {
  return blocks.map((block) => cellWords(block, row)).join(';');
}

function recipeOf(
  sheet: Sheet,
  chosen: Chosen,
  findings: Findings,
  mode: Mode,
  key: readonly string[] | undefined,
): Recipe {
  return {
    version: 1,
    title: `${sheet.label}: ${findings.name || 'pasted'}`,
    sheet: sheet.name,
    columns: chosen.matches
      .filter((m) => m.source.heading !== '')
      .map(({ source, column }) => ({
        heading: source.heading,
        column: column.name,
        ...(column.kind === 'number' && column.dimension
          ? { unit: source.unit.value ?? displayUnitOf(column)!.unit }
          : {}),
        ...(source.dateOrder && column.kind === 'date' ? { dateOrder: source.dateOrder.value } : {}),
        ...(source.clock ? { clock: source.clock.value } : {}),
      })),
    rest: chosen.leftOut.length > 0 ? 'ignore' : 'match',
    mode,
    ...(key ? { key: [...key] } : {}),
  };
}

export const recipeEdit = (taken: Taken): Edit => ({
  do: 'set-part',
  part: 'recipes',
  key: taken.recipeKey,
  value: recipeJson(taken.recipe),
});

function reportOf(
  placing: Placing,
  plan: Plan,
  chosen: Chosen,
  notes: readonly (readonly Note[])[],
  findings: Findings,
): Report {
  const heldRows = placing.heldRows.length + plan.held.length;
  const placed = plan.added + plan.updated + plan.unchanged;
  const columns: ColumnReport[] = placing.placed.map((p, i) => columnReport(p, chosen, notes[i]!));
  for (const { source, column } of chosen.computed)
    columns.push({
      ...leftOut(source),
      notes: [note('computed-column', { heading: source.heading, column: column.name })],
    });
  for (const source of chosen.leftOut) columns.push({ ...leftOut(source), notes: [] });
  const general: Note[] = [...findings.notes];
  if (chosen.leftOut.length > 0) general.push(note('columns-left-out', { count: chosen.leftOut.length }));
  if (placing.shortPlaced > 0) general.push(note('short-rows-placed', { count: placing.shortPlaced }));
  if (placing.repeated > 0) general.push(note('headings-again', { count: placing.repeated }));
  const footer = placing.apart.filter((a) => a.as === 'footer');
  if (footer.length > 0)
    general.push(
      note('footer-apart', {
        count: footer.length,
        raw: footer
          .map((f) => f.raw)
          .slice(0, 2)
          .join(' / ')
          .slice(0, 120),
      }),
    );
  if (heldRows > 0) general.push(note('rows-held', { count: heldRows }));
  if (plan.unchanged > 0) general.push(note('seen-before', { count: plan.unchanged }));
  return {
    name: findings.name,
    lines: {
      total: placing.read,
      preamble: placing.preamble,
      headings: placing.headings,
      blank: placing.blank,
      repeatedHeadings: placing.repeated,
      footer: placing.footer,
      rows: placing.rowLines,
    },
    rows: {
      in: placing.rows + placing.heldRows.length,
      placed,
      held: heldRows,
      added: plan.added,
      updated: plan.updated,
      unchanged: plan.unchanged,
    },
    cells: {
      filled: placing.placed.reduce((n, { lane }) => n + lane.filled, 0),
      held: placing.placed.reduce((n, { lane }) => n + lane.held.size, 0),
    },
    columns,
    apart: placing.apart,
    notes: [...general, ...columns.flatMap((c) => c.notes)],
  };
}

function columnReport(
  { match, lane, unit, factor }: Placed,
  chosen: Chosen,
  notes: readonly Note[],
): ColumnReport {
  return {
    heading: match.source.heading || match.source.label,
    column: match.column.name,
    isNew: chosen.isNew.has(match.column.id),
    kind: match.column.kind,
    factor: factor * (unit ? unit.per / unit.of : 1),
    unit: unit?.unit ?? null,
    filled: lane.filled,
    blank: lane.blank,
    held: lane.held.size,
    notes,
  };
}

const leftOut = (source: ColumnFinding): Omit<ColumnReport, 'notes'> => ({
  heading: source.heading,
  column: null,
  isNew: false,
  kind: null,
  factor: 1,
  unit: null,
  filled: source.filled,
  blank: source.blank,
  held: 0,
});

import type { Edit } from '../book/edit.ts';
import { limits } from '../book/file-frame.ts';
import type { Sheet } from '../book/model.ts';
import { properName } from '../book/names.ts';
import type { Findings, IntakeOptions, Progress, Target } from './api.ts';
import { DateColumnBuilder } from './cells/index.ts';
import { boundsFor, HEAD, type Inspected, inspecting } from './detect/index.ts';
import type { Recipe } from './import-settings/index.ts';
import type { Imported } from './imported.ts';
import { type Mode, planning } from './merge/index.ts';
import type { ImportOptions } from './options.ts';
import { guessWho, isRoster, settleWho } from './people/index.ts';
import {
  chooseColumns,
  columnNotes,
  differingTotals,
  doubtfulRows,
  newSheet,
  Placing,
  previewOf,
  recipeCovers,
  recipeFits,
  repeatedRows,
  unreadableOf,
} from './place/index.ts';
import { decodePieces, parseRows } from './read/index.ts';
import { provenanceOf, recipeOf } from './records.ts';
import { reportOf } from './report.ts';
import { IntakeRefusal } from './sentences/index.ts';

/** Share of a recipe's headings from which a file counts as meant for it, so that a missing one is told and not guessed over. */
const MEANT = 0.5;
const MOST_DOUBTFUL = 200;

/** Brings a file's rows to a sheet, as edits. @throws IntakeRefusal */
export function* importing(
  bytes: Uint8Array,
  target: Target,
  options: ImportOptions = {},
): Generator<Progress, Imported> {
  const { inspected, recipe, key } = yield* recognised(bytes, options);
  const { findings } = inspected;
  const sheet = target.sheet ?? newSheet(target, findings);
  const chosen = chooseColumns(sheet, target, findings, recipe, options);
  const placing = new Placing(inspected, chosen.matches, {
    recipe,
    now: options.now ?? '',
    missing: options.choices?.missing,
    boundsOf: boundsFor(options),
    expected: expectedRows(findings, bytes.length),
    sheet: sheet.name,
    room: roomIn(sheet, target, chosen.newColumns.length, options.mode ?? recipe?.mode ?? 'append'),
  });
  yield* placeAll(bytes, inspected, placing);
  const lineOf = (row: number): number => placing.lines[row]!;
  const notes = placing.placed.map((p) => columnNotes(p, lineOf));
  const filled = placing.placed.map(({ match, builder }) => ({
    column: match.column,
    cells: builder.finish(),
  }));
  const roster = isRoster(target.book, sheet);
  const given = options.who === undefined ? recipe?.who : (options.who ?? undefined);
  const who = options.who === null ? null : (given ?? (roster ? null : guessWho(target.book, sheet, filled)));
  const settled = who ? settleWho(filled, target.book, who, given === undefined) : null;
  const doubtful = yield* doubtfulRows(filled, placing.rows, options.plausibility, lineOf);
  yield { done: bytes.length, total: bytes.length, about: 'comparing rows' };
  const mode = options.mode ?? recipe?.mode ?? 'append';
  const plan = yield* planning({
    sheet,
    newColumns: chosen.newColumns,
    filled,
    rows: placing.rows,
    mode,
    key: options.key ?? recipe?.key ?? [],
    ofDiffering: options.ofDiffering ?? recipe?.ofDiffering ?? null,
    roster,
    lineOf,
    rawOf: (lines) => rawLines(bytes, inspected, lines),
  });
  const repeated = yield* repeatedRows(filled, placing.rows, lineOf);
  const report = reportOf(placing, plan, chosen, findings, notes, [
    ...differingTotals(placing),
    ...(settled?.notes ?? []),
    ...repeated,
    ...doubtful.notes,
  ]);
  const made =
    recipe ??
    recipeOf(
      sheet,
      chosen,
      findings,
      plan,
      options.key,
      settled ? who : null,
      findings.workbook ? {} : options.choices,
    );
  return {
    edits: [...(target.sheet ? [] : sheetEdits(sheet, target)), ...plan.edits],
    report,
    heldRows: [...placing.heldRows, ...plan.held].sort((a, b) => a.line - b.line),
    unreadable: unreadableOf(placing.placed, lineOf),
    doubtfulLines: doubtful.rows.slice(0, MOST_DOUBTFUL).map(lineOf),
    provenance: provenanceOf(inspected, sheet, made, recipe !== null, plan.mode, options.now ?? '', report),
    findings,
    preview: previewOf(filled, placing.rows, doubtful.rows, lineOf),
    recipe: made,
    recipeKey: key ?? properName(made.title),
    byRecipe: recipe !== null,
    changes: plan.changes,
    differing: plan.differing,
    mode: plan.mode,
    key: plan.key,
    proposals: chosen.proposals.map(({ source, column, by }) => ({
      heading: source.heading,
      column: column.name,
      by,
    })),
    who: settled?.report ?? null,
    whoRule: settled ? who : null,
  };
}

interface Recognised {
  readonly inspected: Inspected;
  readonly recipe: Recipe | null;
  readonly key: string | null;
}

/** Looks at the file, and finds the recipe that its headings call for. */
function* recognised(bytes: Uint8Array, options: ImportOptions): Generator<Progress, Recognised> {
  if (options.recipe)
    return {
      inspected: yield* inspecting(bytes, readAs(options, options.recipe)),
      recipe: options.recipe,
      key: null,
    };
  const inspected = yield* inspecting(bytes, options);
  const headings = inspected.findings.columns.map((c) => c.heading);
  const [best, ...others] = (options.recipes ?? [])
    .map((entry) => ({
      ...entry,
      fits: recipeFits(entry.recipe, inspected.layout.headings, headings),
      covers: recipeCovers(entry.recipe, headings),
    }))
    .sort((a, b) => b.fits - a.fits || b.covers - a.covers);
  if (!best || best.fits < MEANT) return { inspected, recipe: null, key: null };
  const equal = others.find(
    ({ fits, covers, recipe }) =>
      fits === 1 && fits === best.fits && covers === best.covers && !sameButTitle(recipe, best.recipe),
  );
  if (equal)
    throw new IntakeRefusal('settings-tie', {
      name: inspected.findings.name,
      one: best.recipe.title,
      other: equal.recipe.title,
    });
  const { recipe, key } = best;
  if (!recipe.read && !recipe.shape && recipe.rowIsSet === undefined) return { inspected, recipe, key };
  return {
    inspected: yield* inspecting(bytes, readAs({ ...options, hash: inspected.findings.hash }, recipe)),
    recipe,
    key,
  };
}

const sameButTitle = (a: Recipe, b: Recipe): boolean =>
  JSON.stringify({ ...a, title: '' }) === JSON.stringify({ ...b, title: '' });

/** What the recipe says about reading the file; what is chosen for this one file goes before it. */
function readAs(options: ImportOptions, recipe: Recipe): IntakeOptions {
  const shape = recipe.shape ? { shape: recipe.shape } : {};
  const sets = recipe.rowIsSet === undefined ? {} : { rowIsSet: recipe.rowIsSet };
  return { ...options, choices: { ...(recipe.read ?? {}), ...shape, ...sets, ...(options.choices ?? {}) } };
}

function* placeAll(bytes: Uint8Array, inspected: Inspected, placing: Placing): Generator<Progress, void> {
  let done = 0;
  const count = function* (pieces: Iterable<string>): Generator<string> {
    for (const piece of pieces) {
      done += piece.length;
      yield piece;
    }
  };
  const pieces = count(decodePieces(bytes, inspected.findings.encoding.value));
  for (const batch of parseRows(pieces, inspected.dialect)) {
    placing.take(batch);
    yield { done: Math.min(done, bytes.length), total: bytes.length, about: 'placing rows' };
  }
  placing.end();
  for (const { builder } of placing.placed) if (builder instanceof DateColumnBuilder) builder.settle();
}

/** Rows as they stand in the file, by the line on which they begin. */
function rawLines(bytes: Uint8Array, inspected: Inspected, lines: ReadonlySet<number>): Map<number, string> {
  const raw = new Map<number, string>();
  for (const batch of parseRows(decodePieces(bytes, inspected.findings.encoding.value), inspected.dialect))
    for (let row = 0; row < batch.rows.length; row++) {
      const line = batch.lineOf(row);
      if (lines.has(line)) raw.set(line, batch.rawOf(row));
    }
  return raw;
}

const sheetEdits = ({ id, name, label, purpose }: Sheet, { book }: Target): Edit[] => [
  {
    do: 'add-sheet',
    index: book?.sheets.length ?? 0,
    sheet: { id, name, label, purpose, rows: 0, columns: [] },
  },
];

/** Rows that the sheet can take before the book's file could no longer be opened. */
function roomIn(sheet: Sheet, { book }: Target, newColumns: number, mode: Mode): number {
  const columns = Math.max(1, sheet.columns.length + newColumns);
  const others = (book?.sheets ?? []).filter((s) => s.id !== sheet.id);
  const cells = others.reduce((n, s) => n + s.rows * s.columns.length, 0);
  const most = Math.min(limits.rows, Math.floor((limits.cells - cells) / columns));
  return mode === 'replace' ? most : most - sheet.rows;
}

/** Rows to make room for: all of a short file, an estimate of a long one. */
const expectedRows = (f: Findings, bytes: number): number =>
  f.partial ? Math.ceil((f.rows / HEAD) * bytes * 1.05) : f.rows;

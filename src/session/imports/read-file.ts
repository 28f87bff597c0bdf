/** Reads a table file for an open book and says what would become of it: what page and command line decide an import by. */
import { sheetOf } from '../../book/book.ts';
import type { Cell, Held } from '../../book/cell.ts';
import type { Edit } from '../../book/edit.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import {
  type Choices,
  type ColumnFinding,
  type Finding,
  type Findings,
  type Imported,
  IntakeRefusal,
  inspecting,
  preparing as opening,
  type Progress,
  type Report,
  sentence,
} from '../../intake/index.ts';
import type { Locale } from '../../units/locale.ts';
import { unitFromWord } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';
import type {
  Differing,
  FileColumn,
  FileDecisions,
  FileFindings,
  FileReading,
  FoundOut,
  OpenQuestion,
  Replacing,
  ShownRow,
  Stuck,
} from './file-reading.ts';
import { replacing } from './imports.ts';
import { type Prepared, preparing } from './prepare-import.ts';
import { sameExporter } from './same-exporter.ts';
import { type Home, homeOf, isDecided, otherSettings } from './target-sheet.ts';

/** Notes that are shown as questions and lists. */
const elsewhere: ReadonlySet<string> = new Set([
  'column-doubt',
  'who-same',
  'who-close',
  'who-unknown',
  'differing-left',
  'differing-added',
]);
/** Rows and names that are shown before they are written, at most. */
const MOST = 500;

export interface Read {
  readonly prepared: Prepared;
  readonly reading: FileReading;
}

/** The open book that a file is read for: a session. */
interface Opened {
  readonly current: Book;
  ask<T>(question: (context: ReadContext) => T): T;
}

/**
 * Opens, inspects and plans a file, step by step. Answers a task: what unpacks workbooks is loaded first.
 * @throws IntakeRefusal
 */
export async function readingFile(
  session: Opened,
  bytes: Uint8Array,
  name: string,
  decisions: FileDecisions,
): Promise<Generator<Progress, Read>> {
  const { table } = decisions;
  const opened = await opening(bytes, table === undefined ? { name } : { name, table });
  return (function* () {
    const { bytes: text, options } = yield* opened;
    const {
      near: _near,
      sheet: _sheet,
      recipe: _recipe,
      replace,
      choices,
      newPeople,
      table: _,
      ...rest
    } = decisions;
    const base = { ...options, name, choices: { ...options.choices, ...choices } };
    const book = session.current;
    // Where sheet and settings are decided, the file need not be looked at to find them.
    const memory = decisions.recipe === undefined && book.parts.recipes.size > 0;
    const found = isDecided(book, decisions) && !memory ? null : yield* inspecting(text, base);
    const home = homeOf(book, found?.columns ?? [], decisions);
    const exporter = memory && found && typeof home.recipe !== 'string' ? sameExporter(book, found) : null;
    try {
      const prepared = yield* preparing(session, {
        ...base,
        ...(exporter ? { choices: bothChoices(exporter.choices, base.choices) } : {}),
        ...rest,
        ...(home.recipe === undefined ? {} : { recipe: home.recipe }),
        ...(newPeople ? { newPeople } : {}),
        ...(found ? { hash: found.hash } : {}),
        bytes: text,
        sheet: home.sheet,
        now: new Date().toISOString(),
      });
      const { imported } = prepared;
      const replaced = replace || imported.mode !== 'replace' ? null : replacing(book, home.sheet, name);
      return {
        prepared,
        reading: readingOf(
          { book, locale: session.ask(({ locale }) => locale) },
          imported,
          home,
          replaced,
          decisions.key ?? imported.key,
          exporter?.title ?? null,
        ),
      };
    } catch (reason) {
      throw reason instanceof IntakeRefusal ? new CannotRead(reason, stuckIn(book, home, reason)) : reason;
    }
  })();
}

/** What is decided for this file goes before what was decided for the one before. */
const bothChoices = (before: Choices, now: Choices): Choices => ({
  ...before,
  ...now,
  columns: Object.fromEntries(
    [...Object.keys(before.columns ?? {}), ...Object.keys(now.columns ?? {})].map((index) => [
      index,
      { ...before.columns?.[Number(index)], ...now.columns?.[Number(index)] },
    ]),
  ),
});

/** A file that could not be read for a sheet, with what can be done instead. */
export class CannotRead extends Error {
  readonly stuck: Stuck;
  constructor({ message }: IntakeRefusal, stuck: Stuck) {
    super(message);
    this.stuck = stuck;
  }
}

function stuckIn(book: Book, { sheet: id }: Home, { note: why }: IntakeRefusal): Stuck {
  const sheet = id === null ? undefined : sheetOf(book, id);
  // What the refusal says about import settings: the ones that did not fit.
  const title = why.details.recipe === undefined ? undefined : String(why.details.recipe);
  return {
    sheet: sheet ? { id: sheet.id, label: sheet.label } : null,
    title: title ?? null,
    others: otherSettings(book).filter((one) => one.title !== title),
  };
}

const foundOut = <T>({ value, certainty, because }: Finding<T>): FoundOut<T> => ({
  value,
  doubtful: certainty === 'doubtful',
  because: sentence(because),
});

function readingOf(
  { book, locale }: { readonly book: Book; readonly locale: Locale },
  imported: Imported,
  { sheet: id, asked }: Home,
  replaced: Replacing | null,
  key: readonly string[],
  like: string | null,
): FileReading {
  const { report, findings, recipe, preview, who } = imported;
  const sheet = id === null ? undefined : sheetOf(book, id);
  const columns = columnsOf(imported.edits, sheet);
  const written = (cell: Cell, name: string): string => textOf(cell, columns.get(nameKey(name)), locale);
  const shown = ({ line, cells }: { line: number; cells: readonly Cell[] }): ShownRow => ({
    line,
    cells: cells.map((cell, i) =>
      isHeld(cell) ? { text: cell.held, held: cell.reason } : { text: written(cell, preview.columns[i]!) },
    ),
  });
  const fileColumns = columnsOfFile(findings, report, columns, sheet);
  return {
    name: findings.name,
    size: findings.size,
    tables: findings.workbook && { table: findings.workbook.table, tables: findings.workbook.tables },
    sheet: { id, label: sheet?.label ?? newLabel(imported.edits) },
    fits: asked,
    replacing: replaced,
    recipe: imported.byRecipe ? recipe.title : null,
    like: imported.byRecipe ? null : like,
    mode: imported.mode,
    key,
    findings: fileFindings(findings),
    columns: fileColumns,
    questions: report.notes.flatMap(({ reason, details }) => {
      const column = fileColumns.find(({ heading }) => heading === details.heading);
      return reason === 'column-doubt' && column
        ? [
            {
              column: column.index,
              about: details.about as OpenQuestion['about'],
              sentence: String(details.why),
            },
          ]
        : [];
    }),
    differing: differingOf(imported, columns, written),
    unreadable: imported.unreadable,
    rows: report.rows,
    cells: report.cells,
    notes: report.notes.filter(({ reason }) => !elsewhere.has(reason)).map(sentence),
    preview: {
      columns: preview.columns.map((name) => headingOf(columns.get(nameKey(name))) ?? name),
      first: preview.first.map(shown),
      doubtful: preview.doubtful.map(shown),
    },
    changes: imported.changes.slice(0, MOST).map(({ row, column, before, after }) => ({
      row,
      column: columns.get(nameKey(column))?.label ?? column,
      before: written(before, column),
      after: written(after, column),
    })),
    heldRows: imported.heldRows
      .slice(0, MOST)
      .map(({ line, raw, reason }) => ({ line, raw, reason: sentence(reason) })),
    who: who && {
      ...who,
      rule: imported.whoRule,
      people: peopleOf(book, imported),
      roster: book.sheets.find(({ name }) => nameKey(name) === nameKey(who.roster))?.label ?? who.roster,
    },
  };
}

/** Rows that differ from those there, in the words of the sheet. */
function differingOf(
  { differing }: Imported,
  columns: ReadonlyMap<string, Column>,
  written: (cell: Cell, name: string) => string,
): Differing | null {
  if (!differing) return null;
  const { count, key, decided, first } = differing;
  return {
    count,
    key: key.map((name) => columns.get(nameKey(name))?.label ?? name),
    decided: decided === 'hold' ? null : decided,
    first: first.map(({ cells, ...row }) => ({
      ...row,
      cells: cells.map(({ column, there, file }) => ({
        column: headingOf(column) ?? column.name,
        there: written(there, column.name),
        file: `${written(file, column.name)}${isHeld(file) ? ' (unreadable)' : ''}`,
      })),
    })),
  };
}

function fileFindings(f: Findings): FileFindings {
  return {
    encoding: foundOut(f.encoding),
    delimiter: foundOut(f.delimiter),
    quote: foundOut(f.quote),
    preamble: foundOut(f.preamble),
    headingLines: foundOut(f.headingLines),
    unitsLine: foundOut(f.unitsLine),
    footer: foundOut(f.footer),
    shortRows: foundOut(f.shortRows),
    shape: { ...foundOut(f.shape), proposed: f.shape.others?.find((shape) => shape !== null) ?? null },
  };
}

/** The columns in the order of the file, each with what was found out and where it goes. */
function columnsOfFile(
  { columns }: Findings,
  report: Report,
  known: ReadonlyMap<string, Column>,
  sheet: Sheet | undefined,
): FileColumn[] {
  const left = [...report.columns];
  const reportOf = ({ heading, label }: ColumnFinding) => {
    const at = left.findIndex((one) => one.heading === heading || one.heading === (heading || label));
    return at < 0 ? undefined : left.splice(at, 1)[0];
  };
  return columns.flatMap((finding) => {
    const own = reportOf(finding);
    if (!own) return [];
    const { unit } = finding;
    const column = own.column === null ? undefined : known.get(nameKey(own.column));
    const { notes, kind: _, ...counts } = own;
    return [
      {
        ...counts,
        heading: finding.heading || finding.label,
        index: finding.index,
        label: column?.label ?? null,
        fixed: (!own.isNew && sheet ? column?.dimension : undefined) ?? null,
        kind: foundOut(finding.kind),
        written: {
          ...foundOut(unit),
          value: unit.value === null ? null : (unitFromWord(unit.value)?.unit ?? unit.value),
        },
        decimal: foundOut(finding.decimal),
        dateOrder: finding.dateOrder && foundOut(finding.dateOrder),
        clock: finding.clock && foundOut(finding.clock),
        unitsFor: (finding.unitsOf?.others ?? []).flat(),
        examples: finding.examples,
        notes: notes.map(sentence),
      },
    ];
  });
}

const flat = (edits: readonly Edit[]): Edit[] =>
  edits.flatMap((edit) => (edit.do === 'batch' ? flat(edit.edits) : [edit]));

/** Every column that rows go to by its name: the sheet's, and those that are to be made. */
function columnsOf(edits: readonly Edit[], sheet: Sheet | undefined): Map<string, Column> {
  const made = flat(edits).flatMap((edit) => (edit.do === 'add-column' ? [edit.column] : []));
  return new Map([...(sheet?.columns ?? []), ...made].map((column) => [nameKey(column.name), column]));
}

const newLabel = (edits: readonly Edit[]): string =>
  flat(edits).flatMap((edit) => (edit.do === 'add-sheet' ? [edit.sheet.label] : []))[0] ?? 'New sheet';

const isHeld = (cell: Cell): cell is Held => cell !== null && typeof cell === 'object' && 'held' in cell;

const headingOf = (column: Column | undefined): string | undefined =>
  column && (column.unit ? `${column.label} (${column.unit})` : column.label);

function textOf(cell: Cell, column: Column | undefined, locale: Locale): string {
  if (cell === null || !column) return '';
  if (typeof cell !== 'object') return displayOf(cell, column, locale);
  if ('date' in cell) return displayOf(cell.date, { ...column, kind: 'date' }, locale);
  return 'held' in cell ? cell.held : `=${cell.formula}`;
}

/** Who is on the roster, for choosing from. */
function peopleOf(book: Book, { whoRule }: Imported): readonly string[] {
  const roster = book.sheets.find(({ name }) => whoRule && nameKey(name) === nameKey(whoRule.roster));
  const column = roster?.columns.find(({ name }) => whoRule && nameKey(name) === nameKey(whoRule.name));
  const cells = column && roster?.cells.get(column.id);
  const texts = (cells?.texts ?? []).filter((text) => text !== undefined && text !== '');
  return [...new Set(texts as string[])].slice(0, 2000);
}

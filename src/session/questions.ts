import type { Issue } from '../../functions/core/issue.ts';
import type { Matrix, Value } from '../../functions/core/value.ts';
import { columnOf, sheetOf } from '../book/book.ts';
import type { History } from '../book/history.ts';
import type { Calculation, FormulaCheck, Place } from '../calc/api.ts';
import type { Outline } from './api.ts';
import { chartsOutline } from './charts/chart-record.ts';
import type { Doubt } from './checks/doubt.ts';
import { doubtCount, doubtsOf } from './checks/doubts.ts';
import { oldAfter } from './checks/doubts-data.ts';
import { type UnreadableCells, unreadableCells } from './checks/unreadable-cells.ts';
import { type FigureOptions, figureDescent, figureHeel, figureOf, figureOptions } from './figure/figure.ts';
import type { Figure, HeelOrAnkle, PostureFigure } from './figure/figure-answers.ts';
import { draftOf, type MarksDraft, marksDraft } from './marks/draft.ts';
import { marksToChange } from './marks/mark-record.ts';
import { type TriedMarks, triedMarks } from './marks/tried-marks.ts';
import type { ReadContext } from './open-book.ts';
import { type StoredPicture, storedPicture } from './picture/stored.ts';
import { type ColumnSummary, summaryOf } from './sheet/column-summary.ts';
import { finding, type Search, searchSchema } from './sheet/find.ts';
import { type FormulaSummary, type SummaryFormula, triedSummary } from './sheet/own-summary.ts';
import { type RowRecord, recordsOf } from './sheet/records.ts';
import { type RowView, rowsInView, rowView } from './sheet/row-view.ts';
import type { CellInfo, Tile } from './sheet/sheet-answers.ts';
import { cellInfoOf, namesOutline, type Preview, previewOf, sheetOutline, tileOf } from './sheet/views.ts';
import { type CsvOptions, csvOf } from './text/csv.ts';
import { builtInExample, type LiveExample, liveExample } from './working/live-example.ts';
import { workingOf } from './working/working.ts';
import type { Working } from './working/working-answers.ts';

/** Everything that can be asked of an open book. Nothing here changes it; what comes back is plain data. */
export abstract class Questions {
  protected version = 1;
  protected changed = 1;
  protected abstract readonly history: History;
  protected abstract readonly calculation: Calculation;
  protected abstract context(): ReadContext;

  /** Counts changes of the book and of its values. */
  get changes(): number {
    return this.version;
  }

  /** Asks what is not asked of every book, such as a chart or handouts: whoever asks loads what answers. */
  ask<T>(question: (context: ReadContext) => T): T {
    return question(this.context());
  }
  outline(): Outline {
    const context = this.context();
    const old = oldAfter(context.book);
    const { end: undoEnd } = this.history;
    return {
      title: context.book.title,
      version: this.version,
      changed: this.changed,
      sheets: context.book.sheets.map((sheet) => sheetOutline(sheet, context)),
      names: namesOutline(context),
      undo: this.history.undo,
      redo: this.history.redo,
      ...(undoEnd === undefined ? {} : { undoEnd }),
      doubts: doubtCount(context),
      charts: chartsOutline(context.book),
      ...(old === undefined ? {} : { testsOlderThan: old }),
    };
  }
  /** Rows [row, row + rows) of columns [column, column + columns) as the grid shows them. @throws Refusal */
  tile(sheet: string, row: number, rows: number, column: number, columns: number): Tile {
    return tileOf(this.context(), this.version, { sheet, row, rows, column, columns });
  }
  /** The rows that a view shows, in its order. @throws Refusal */
  rowsInView(sheet: string, view: RowView): Int32Array {
    return rowsInView(this.context(), sheet, rowView.parse(view));
  }
  /** A tile of rows picked one by one: what a view shows. @throws Refusal */
  tileOfRows(sheet: string, rows: ArrayLike<number>, column: number, columns: number): Tile {
    return tileOf(this.context(), this.version, { sheet, row: 0, rows: rows.length, column, columns }, rows);
  }
  /** n, mean, SD, least and most of a column, over the rows given. @throws Refusal */
  summary(sheet: string, column: string, rows?: ArrayLike<number>): ColumnSummary {
    return summaryOf(this.context(), sheet, column, rows);
  }
  /** The same for every column of a sheet, by column id. @throws Refusal */
  summaries(sheet: string, rows?: ArrayLike<number>): Readonly<Record<string, ColumnSummary>> {
    const context = this.context();
    const { columns } = sheetOf(context.book, sheet);
    return Object.fromEntries(columns.map(({ id }) => [id, summaryOf(context, sheet, id, rows)]));
  }
  /** What a formula for the line of summaries gives over the rows on show; nothing is changed. @throws Refusal */
  triedSummary(sheet: string, column: string, tried: SummaryFormula): FormulaSummary {
    return triedSummary(this.context(), sheet, column, tried);
  }
  /** Finds cells by what they show, step by step. @throws Refusal */
  finding(search: Search): ReturnType<typeof finding> {
    return finding(this.context(), searchSchema.parse(search));
  }
  /** @throws Refusal */
  cellInfo(place: Required<Place>): CellInfo {
    return cellInfoOf(this.context(), place);
  }
  /** How a cell came about, step by step. @throws Refusal */
  working(place: Required<Place>): Working {
    return workingOf(this.context(), place);
  }
  /** A function applied to a row; null where the row has nothing for it. @throws Refusal */
  example(name: string, place: Required<Place>): LiveExample | null {
    return liveExample(this.context(), name, place);
  }
  /** The same for an example of a built-in function, with placeholders. @throws Refusal */
  builtInExample(example: string, place: Required<Place>): LiveExample | null {
    return builtInExample(this.context(), example, place);
  }
  check(formula: string, place: Place): FormulaCheck {
    return this.calculation.check(formula, place);
  }
  /** What a formula would give there; nothing is changed. */
  evaluate(formula: string, place?: Place): Value | Matrix {
    return this.calculation.evaluate(formula, place);
  }
  /** What a formula would give there, as its column would show it. */
  preview(formula: string, place: Place): Preview {
    return previewOf(this.context(), formula, place);
  }
  /** One sentence for an error value. */
  sentence(issue: Issue): string {
    return this.calculation.sentence(issue);
  }
  /** Every row of a sheet, values by column name. @throws Refusal */
  records(sheet: string): Generator<RowRecord> {
    return recordsOf(this.context(), sheet);
  }
  /** Everything that the book doubts; what was accepted says so. */
  doubts(): readonly Doubt[] {
    return doubtsOf(this.context());
  }
  /** Unreadable cells of a sheet, by column, text and reason. @throws Refusal */
  unreadable(sheet: string): UnreadableCells {
    return unreadableCells(this.context().book, sheet);
  }

  /** The lifter of a row at depth, flat and lifted. @throws Refusal */
  figure(sheet: string, row: number, options: FigureOptions = {}): Figure {
    return figureOf(this.context(), sheet, row, figureOptions.parse(options));
  }
  /** The same lifter going down, posture by posture, to the deepest. @throws Refusal */
  descent(sheet: string, row: number, options: FigureOptions = {}): readonly PostureFigure[] {
    return figureDescent(this.context(), sheet, row, figureOptions.parse(options));
  }
  /** What more ankle range or a heel lift would change for that lifter; null while the build is missing. @throws Refusal */
  heelOrAnkle(sheet: string, row: number, options: FigureOptions = {}): HeelOrAnkle | null {
    return figureHeel(this.context(), sheet, row, figureOptions.parse(options));
  }
  /** The picture's points that a row has. @throws Refusal */
  picture(sheet: string, row: number, hash?: string): StoredPicture {
    return storedPicture(this.context(), sheet, row, hash);
  }
  /** The marks of a column as they are typed. @throws Refusal */
  marks(sheet: string, column: string): MarksDraft {
    const { book, locale } = this.context();
    const own = marksToChange(book, sheet).find((one) => one.column === column);
    return own ? draftOf(own, columnOf(sheetOf(book, sheet), column), locale) : { rules: [] };
  }
  /** What marks would do that are being written; nothing is changed. @throws Refusal */
  triedMarks(sheet: string, column: string, draft: MarksDraft): TriedMarks {
    return triedMarks(this.context(), sheet, column, marksDraft.parse(draft));
  }
  /** A sheet as CSV that comes back equal. @throws Refusal */
  toCsv(sheet: string, options: CsvOptions = {}): string {
    return csvOf(this.context(), sheet, options);
  }
}

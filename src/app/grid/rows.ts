/** A group of rows that stand together in a view. */
export interface RowGroup {
  /** What they have in common, as shown. */
  readonly label: string;
  readonly rows: Int32Array;
}

/** What a line of the grid is: a row of the sheet, the blank one after the last, or a line of summaries. */
export type Line =
  | { readonly is: 'row'; readonly row: number }
  | { readonly is: 'new'; readonly row: number }
  | { readonly is: 'summary'; readonly group: number };

/** A run of sheet rows that follow each other. */
export interface Run {
  readonly row: number;
  readonly count: number;
}

/**
 * Which sheet row each line of the grid shows. Without a view they are the same; with one the lines are the view's rows,
 * a line of summaries after each group, and at the end the blank row (where there is one) and the summary of all.
 * Numbers of `codes`: sheet rows from 0, −1 − group for summaries.
 */
export class Lines {
  readonly count: number;
  private readonly back = new Map<number, number>();

  private constructor(
    /** Rows of the sheet. */
    readonly total: number,
    private readonly codes: Int32Array | null,
    readonly groups: readonly RowGroup[],
    /** A blank row after the last is shown. */
    readonly open: boolean,
    /** A summary of all rows stands at the end. */
    readonly summed: boolean,
    /** Further blank rows: below one that was just filled in and is not in the book yet. */
    readonly ahead = 0,
  ) {
    this.count = (codes?.length ?? total) + this.blank + (summed ? 1 : 0);
  }

  private get blank(): number {
    return this.open ? 1 + this.ahead : 0;
  }

  /** The same lines with so many further blank rows; a view has none. */
  withAhead(ahead: number): Lines {
    if (!this.plain || !this.open || ahead === this.ahead) return this;
    return new Lines(this.total, null, [], true, this.summed, ahead);
  }

  /** All rows in their order. */
  static all(total: number, open: boolean, summed: boolean): Lines {
    return new Lines(total, null, [], open, summed);
  }

  /** The rows of a view, in its order. */
  static of(total: number, rows: Int32Array, open: boolean, summed: boolean): Lines {
    return new Lines(total, rows, [], open, summed);
  }

  /** Rows by group, a summary after each. */
  static grouped(total: number, groups: readonly RowGroup[], summed: boolean): Lines {
    const codes = new Int32Array(groups.reduce((all, { rows }) => all + rows.length + 1, 0));
    let at = 0;
    groups.forEach(({ rows }, group) => {
      codes.set(rows, at);
      at += rows.length;
      codes[at++] = -1 - group;
    });
    return new Lines(total, codes, groups, false, summed);
  }

  /** Rows of the sheet that are shown. */
  get listed(): number {
    return this.codes ? this.codes.length - this.groups.length : this.total;
  }

  /** True while lines and sheet rows are the same. */
  get plain(): boolean {
    return this.codes === null;
  }

  at(line: number): Line {
    const listed = this.codes?.length ?? this.total;
    if (line < listed) {
      const code = this.codes ? this.codes[line]! : line;
      return code < 0 ? { is: 'summary', group: -1 - code } : { is: 'row', row: code };
    }
    if (line < listed + this.blank) return { is: 'new', row: this.total + line - listed };
    return { is: 'summary', group: this.groups.length };
  }

  /** The line that shows a sheet row; undefined when the view leaves it out. */
  lineOf(row: number): number | undefined {
    if (!this.codes) return row <= this.total + this.ahead ? row : undefined;
    if (this.back.size === 0)
      this.codes.forEach((code, line) => {
        if (code >= 0) this.back.set(code, line);
      });
    return this.back.get(row);
  }

  /** The sheet rows of the lines [from, to], both in, as runs. The blank row counts where it is in; summaries do not. */
  runs(from: number, to: number): readonly Run[] {
    if (!this.codes) {
      const last = Math.min(to, this.total + this.blank - 1);
      return last < from ? [] : [{ row: from, count: last - from + 1 }];
    }
    const runs: { row: number; count: number }[] = [];
    for (let line = from; line <= to; line++) {
      const what = this.at(line);
      if (what.is === 'summary') continue;
      const run = runs.at(-1);
      if (run && run.row + run.count === what.row) run.count++;
      else runs.push({ row: what.row, count: 1 });
    }
    return runs;
  }

  /** The same without the line that makes a new row: filling stops above it. */
  filled(from: number, to: number): readonly Run[] {
    return this.runs(from, to).flatMap(({ row, count }) =>
      row < this.total ? [{ row, count: Math.min(count, this.total - row) }] : [],
    );
  }
}

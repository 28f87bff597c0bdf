import { type Issue, isIssue, issue } from '../../../functions/core/issue.ts';
import { nameKey } from '../../book/names.ts';
import type { Span } from '../api.ts';
import type { Address, Bound, CallNode, ErrorNode, Node } from '../ast.ts';
import { notOffered } from '../builtins/not-offered.ts';
import { functionNames, isFunction } from '../catalogue.ts';
import { limits } from '../limits.ts';
import { issueOf } from '../sentences.ts';
import { addressText, lettersOf } from './address.ts';
import type { BookIndex, SheetIndex } from './book-index.ts';
import { counted, tooWild } from './fixed-calls.ts';
import { nearest } from './names.ts';
import { offsetTarget } from './offset.ts';

/** Where a formula stands, as far as names matter. */
export interface Scope {
  /** Id of the sheet; undefined for a formula that stands nowhere. */
  readonly sheet?: string | undefined;
  /** A column's formula: addresses without `$` move along with the row. */
  readonly column: boolean;
}

export interface Problem {
  readonly span: Span;
  readonly issue: Issue;
}

export interface Binding {
  readonly bound: Bound;
  readonly problems: readonly Problem[];
}

/** Looks up all names and addresses of a formula. What is not found becomes an error value and a problem. */
export function bind(node: Node, book: BookIndex, scope: Scope): Binding {
  const binder = new Binder(book, scope);
  const bound = binder.bind(node, new Set());
  return { bound, problems: binder.problems };
}

type Locals = ReadonlySet<string>;

class Binder {
  readonly problems: Problem[] = [];
  private readonly own: SheetIndex | undefined;

  constructor(
    private readonly book: BookIndex,
    private readonly scope: Scope,
  ) {
    this.own = scope.sheet === undefined ? undefined : book.sheetsById.get(scope.sheet);
  }

  bind(node: Node, locals: Locals): Bound {
    switch (node.type) {
      case 'unary':
      case 'percent':
        return { ...node, operand: this.bind(node.operand, locals) };
      case 'binary':
        return { ...node, left: this.bind(node.left, locals), right: this.bind(node.right, locals) };
      case 'array':
        return { ...node, rows: node.rows.map((row) => row.map((cell) => this.bind(cell, locals))) };
      case 'call':
        return this.call(node, locals);
      case 'name':
        return locals.has(nameKey(node.name))
          ? { type: 'local', name: nameKey(node.name), span: node.span }
          : this.name(node.name, node.span);
      case 'qualified':
        return this.qualified(node.sheet, node.name, node.span);
      case 'cell':
        return this.cell(node.sheet, node.at, node.span);
      case 'cells':
        return this.cells(node.sheet, node.from, node.to, node.span);
      case 'error':
        return node.lost === undefined ? node : this.problem(node.span, issueOf(node));
      default:
        return node;
    }
  }

  private problem(span: Span, found: Issue): ErrorNode {
    this.problems.push({ span, issue: found });
    return { type: 'error', code: found.code, issue: found, span };
  }

  private name(name: string, span: Span): Bound {
    const key = nameKey(name);
    const column = this.own?.columns.get(key);
    if (this.own && column) return { type: 'row-of', sheet: this.own.sheet.id, column: column.id, span };
    const named = this.book.names.get(key);
    if (named) {
      const { sheet, column: of, row } = named;
      return { type: 'named', name: named.name, sheet, column: of, row, span };
    }
    const sheet = this.book.sheets.get(key);
    if (sheet) {
      const first = sheet.sheet.columns[0]?.name;
      return this.problem(
        span,
        issue('#NAME?', 'name-of-sheet', {
          received: sheet.sheet.name,
          ...(first ? { expected: first } : {}),
        }),
      );
    }
    const columns = this.own ? this.own.sheet.columns.map((c) => c.name) : [];
    const meant = nearest(name, [...columns, ...[...this.book.names.values()].map((n) => n.name)]);
    const elsewhere = meant ? undefined : this.columnElsewhere(key);
    const expected = meant ?? elsewhere ?? (isFunction(name) ? `${name.toUpperCase()}(…)` : undefined);
    return this.problem(
      span,
      issue('#NAME?', 'unknown-name', {
        received: name,
        ...(expected ? { expected } : {}),
        ...(this.own ? { details: { sheet: this.own.sheet.name } } : {}),
      }),
    );
  }

  private columnElsewhere(key: string): string | undefined {
    for (const { sheet, columns } of this.book.sheets.values()) {
      const column = columns.get(key);
      if (column) return `${sheet.name}.${column.name}`;
    }
    return undefined;
  }

  private sheetCalled(name: string, span: Span): SheetIndex | ErrorNode {
    const sheet = this.book.sheets.get(nameKey(name));
    if (sheet) return sheet;
    const expected = nearest(
      name,
      [...this.book.sheets.values()].map((s) => s.sheet.name),
    );
    return this.problem(
      span,
      issue('#NAME?', 'unknown-sheet', { received: name, ...(expected ? { expected } : {}) }),
    );
  }

  private qualified(sheetName: string, name: string, span: Span): Bound {
    const sheet = this.sheetCalled(sheetName, span);
    if (!('sheet' in sheet)) return sheet;
    const column = sheet.columns.get(nameKey(name));
    if (column) return { type: 'column-of', sheet: sheet.sheet.id, column: column.id, span };
    const meant = nearest(
      name,
      sheet.sheet.columns.map((c) => c.name),
    );
    return this.problem(
      span,
      issue('#NAME?', 'unknown-column', {
        received: name,
        ...(meant ? { expected: `${sheet.sheet.name}.${meant}` } : {}),
        details: { sheet: sheet.sheet.name },
      }),
    );
  }

  private sheetOf(name: string | undefined, at: Address, span: Span): SheetIndex | ErrorNode {
    if (name !== undefined) return this.sheetCalled(name, span);
    return this.own ?? this.problem(span, issue('#REF!', 'no-sheet-here', { received: addressText(at) }));
  }

  private beyond(sheet: SheetIndex, at: Address, span: Span): ErrorNode {
    const { name, columns } = sheet.sheet;
    const last = columns.length === 0 ? 'none' : lettersOf(columns.length - 1);
    return this.problem(
      span,
      issue('#REF!', 'beyond-columns', { received: addressText(at), details: { sheet: name, last } }),
    );
  }

  private cell(sheetName: string | undefined, at: Address, span: Span): Bound {
    const sheet = this.sheetOf(sheetName, at, span);
    if (!('sheet' in sheet)) return sheet;
    const column = sheet.sheet.columns[at.column];
    if (!column) return this.beyond(sheet, at, span);
    const rowMoves = this.scope.column && !at.rowFixed;
    return { type: 'cell-of', sheet: sheet.sheet.id, column: column.id, row: at.row, rowMoves, span };
  }

  private cells(sheetName: string | undefined, from: Address, to: Address, span: Span): Bound {
    const sheet = this.sheetOf(sheetName, from, span);
    if (!('sheet' in sheet)) return sheet;
    if (to.column >= sheet.sheet.columns.length) return this.beyond(sheet, to, span);
    const size = (to.row - from.row + 1) * (to.column - from.column + 1);
    if (size > limits.rangeCells)
      return this.problem(span, issue('#REF!', 'range-too-large', { details: { most: limits.rangeCells } }));
    return {
      type: 'cells-of',
      sheet: sheet.sheet.id,
      columns: sheet.sheet.columns.slice(from.column, to.column + 1).map((c) => c.id),
      from: from.row,
      to: to.row,
      fromMoves: this.scope.column && !from.rowFixed,
      toMoves: this.scope.column && !to.rowFixed,
      span,
    };
  }

  private call(node: CallNode<Node>, locals: Locals): Bound {
    const reason = notOffered.get(node.name);
    if (reason)
      return this.problem(
        node.nameSpan,
        issue('#NAME?', 'not-offered', { function: node.name, expected: reason }),
      );
    if (!isFunction(node.name)) {
      const expected = nearest(node.name, [...functionNames()]);
      return this.problem(
        node.nameSpan,
        issue('#NAME?', 'unknown-function', { received: node.name, ...(expected ? { expected } : {}) }),
      );
    }
    if (node.name === 'LET') return this.letCall(node, locals);
    const count = counted(node, this.book, this.own);
    if (count !== undefined)
      return typeof count === 'number'
        ? { type: 'number', value: count, span: node.span }
        : this.problem(node.span, count);
    if (node.name === 'OFFSET') {
      const target = offsetTarget(node);
      return isIssue(target) ? this.problem(node.span, target) : this.bind(target, locals);
    }
    const wild = tooWild(node);
    if (wild) return this.problem(node.span, wild);
    return { ...node, args: node.args.map((arg) => this.bind(arg, locals)) };
  }

  /** LET(name, value, …, result): each name is known in the values after it and in the result. */
  private letCall(node: CallNode<Node>, locals: Locals): Bound {
    if (node.args.length < 3 || node.args.length % 2 === 0)
      return this.problem(node.span, issue('#VALUE!', 'let-name'));
    const known = new Set(locals);
    const args: Bound[] = [];
    for (let i = 0; i + 1 < node.args.length; i += 2) {
      const name = node.args[i]!;
      if (name.type !== 'name') return this.problem(name.span, issue('#NAME?', 'let-name'));
      args.push({ type: 'local', name: nameKey(name.name), span: name.span });
      args.push(this.bind(node.args[i + 1]!, known));
      known.add(nameKey(name.name));
    }
    args.push(this.bind(node.args.at(-1)!, known));
    return { ...node, args };
  }
}

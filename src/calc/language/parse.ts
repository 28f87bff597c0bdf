import { type ErrorCode, type Issue, issue } from '../../../functions/core/issue.ts';
import type { Span } from '../api.ts';
import type { Address, BinaryOperator, Node } from '../ast.ts';
import { limits } from '../limits.ts';
import { addressFrom, readsAsAddress } from './address.ts';
import { lex, type Token } from './lexer.ts';
import { PERCENT, SIGN, strength } from './operator-order.ts';

/** A formula read: its tree, or where and why it cannot be read. */
export type Parsed =
  | { readonly ok: true; readonly node: Node }
  | { readonly ok: false; readonly issue: Issue; readonly span: Span };

/** Reads a formula; a leading "=" is dropped. Never throws. Spans count in the text as given. */
export function parse(formula: string): Parsed {
  if (formula.length > limits.length)
    return {
      ok: false,
      issue: issue('#ERROR!', 'formula-too-long', {
        received: formula.length,
        details: { most: limits.length },
      }),
      span: { from: limits.length, to: formula.length },
    };
  try {
    return { ok: true, node: new Parser(lex(formula)).whole() };
  } catch (error) {
    if (error instanceof Unreadable) return { ok: false, issue: error.issue, span: error.span };
    throw error;
  }
}

class Unreadable extends Error {
  constructor(
    readonly issue: Issue,
    readonly span: Span,
  ) {
    super(issue.reason);
  }
}

class Parser {
  private at = 0;
  private nesting = 0;
  private readonly depths = new WeakMap<Node, number>();

  constructor(private readonly tokens: readonly Token[]) {}

  whole(): Node {
    if (this.next.type === 'end') throw this.unexpected('a value');
    const node = this.expression(0);
    if (this.tokens[this.at]!.type !== 'end') throw this.unexpected('an operator or the end');
    return node;
  }

  private get next(): Token {
    return this.tokens[this.at]!;
  }

  private take(): Token {
    return this.tokens[this.at++]!;
  }

  private is(text: string): boolean {
    const { type } = this.next;
    return this.next.text === text && (type === 'operator' || type === 'bracket' || type === 'separator');
  }

  private unexpected(expected: string): Unreadable {
    const token = this.next;
    if (token.issue) return new Unreadable(token.issue, token);
    const received = token.type === 'end' ? undefined : token.text;
    const reason = token.type === 'end' ? 'unfinished' : 'unexpected';
    return new Unreadable(
      issue('#ERROR!', reason, {
        expected,
        ...(received === undefined ? {} : { received }),
        details: { at: token.from + 1 },
      }),
      token,
    );
  }

  private refuse(span: Span, reason: string, rest: Omit<Issue, 'code' | 'reason'> = {}): never {
    throw new Unreadable(issue('#ERROR!', reason, rest), { from: span.from, to: span.to });
  }

  /** Gives a new node its depth and refuses trees that would overflow the stack of whoever walks them. */
  private made<N extends Node>(node: N, ...children: readonly Node[]): N {
    let depth = 0;
    for (const child of children) depth = Math.max(depth, this.depths.get(child) ?? 1);
    if (depth + 1 > limits.depth)
      this.refuse(node.span, 'too-many-operators', { details: { most: limits.depth } });
    this.depths.set(node, depth + 1);
    return node;
  }

  private nested<T>(span: Span, read: () => T): T {
    if (++this.nesting > limits.nesting) this.refuse(span, 'too-deep', { details: { most: limits.nesting } });
    const result = read();
    this.nesting--;
    return result;
  }

  private expression(least: number): Node {
    const from = this.next.from;
    let left = this.operand();
    for (;;) {
      if (this.is('%')) {
        if (least > PERCENT) return left;
        const to = this.take().to;
        left = this.made({ type: 'percent', operand: left, span: { from, to } }, left);
        continue;
      }
      if (this.next.type !== 'operator' || !(this.next.text in strength)) return left;
      const operator = this.next.text as BinaryOperator;
      const power = strength[operator];
      if (power < least) return left;
      this.take();
      const right = this.expression(power + 1);
      const span = { from, to: this.tokens[this.at - 1]!.to };
      left = this.made({ type: 'binary', operator, left, right, span }, left, right);
    }
  }

  private operand(): Node {
    const token = this.next;
    switch (token.type) {
      case 'number':
        this.take();
        return { type: 'number', value: token.value!, span: spanOf(token) };
      case 'text':
        this.take();
        if (token.content!.length > limits.text)
          this.refuse(token, 'text-too-long', { details: { most: limits.text } });
        return { type: 'text', value: token.content!, span: spanOf(token) };
      case 'error': {
        this.take();
        const code = token.content as ErrorCode;
        return { type: 'error', code, ...(token.lost ? { lost: token.lost } : {}), span: spanOf(token) };
      }
      case 'word':
        return this.word();
      default:
    }
    if (this.is('+') || this.is('-')) return this.sign();
    if (this.is('(')) return this.parenthesis();
    if (this.is('{')) return this.array();
    throw this.unexpected('a value');
  }

  private sign(): Node {
    const token = this.take();
    const operand = this.nested(token, () => this.expression(SIGN));
    const span = { from: token.from, to: this.tokens[this.at - 1]!.to };
    return this.made({ type: 'unary', operator: token.text as '+' | '-', operand, span }, operand);
  }

  private parenthesis(): Node {
    const open = this.take();
    const inner = this.nested(open, () => this.expression(0));
    if (!this.is(')')) throw this.unexpected('an operator or ")"');
    this.take();
    return inner;
  }

  private word(): Node {
    const token = this.take();
    const span = spanOf(token);
    if (this.is('(')) return this.call(token);
    if (this.is('!')) return this.onSheet(token);
    if (readsAsAddress(token.text)) return this.cells(token, token.from);
    const plain = token.text.toUpperCase();
    if (plain === 'TRUE' || plain === 'FALSE') return { type: 'yes-no', value: plain === 'TRUE', span };
    if (token.text.includes('$')) this.refuse(span, 'stray-dollar', { received: token.text });
    if (this.is(':')) this.refuse(span, 'range-of-names', { received: token.text });
    const [sheet, name, ...rest] = token.text.split('.');
    if (name === undefined) return { type: 'name', name: token.text, span };
    if (name === '' || rest.length > 0) this.refuse(span, 'dotted-name', { received: token.text });
    if (readsAsAddress(name))
      this.refuse(span, 'cell-after-dot', { received: token.text, expected: `${sheet}!${name}` });
    return { type: 'qualified', sheet: sheet!, name, span };
  }

  /** After `sheet` comes `!` and an address. */
  private onSheet(sheet: Token): Node {
    if (/[.$]/.test(sheet.text)) this.refuse(sheet, 'sheet-name', { received: sheet.text });
    this.take();
    const token = this.next;
    if (token.type !== 'word' || !readsAsAddress(token.text)) {
      if (token.type === 'word' && token.text)
        this.refuse({ from: sheet.from, to: token.to }, 'name-after-mark', {
          received: `${sheet.text}!${token.text}`,
          expected: `${sheet.text}.${token.text}`,
        });
      throw this.unexpected('the address of a cell, such as B7');
    }
    this.take();
    return this.cells(token, sheet.from, sheet.text);
  }

  /** An address, or a range when `:` and another address follow. */
  private cells(first: Token, start: number, sheet?: string): Node {
    const at = this.address(first);
    const on = sheet === undefined ? {} : { sheet };
    if (!this.is(':')) return { type: 'cell', ...on, at, span: { from: start, to: first.to } };
    this.take();
    const last = this.next;
    if (last.type !== 'word' || !readsAsAddress(last.text))
      throw this.unexpected('the last cell of the range');
    this.take();
    const end = this.address(last);
    if (this.is(':') || this.is('!')) throw this.unexpected('an operator or the end');
    return { type: 'cells', ...on, ...inOrder(at, end), span: { from: start, to: last.to } };
  }

  private address(token: Token): Address {
    const at = addressFrom(token.text);
    if (!at || at.row >= limits.rows || at.column >= limits.columns)
      return this.refuse(token, 'no-such-address', { received: token.text, details: { rows: limits.rows } });
    return at;
  }

  private call(name: Token): Node {
    if (name.text.includes('$')) this.refuse(name, 'stray-dollar', { received: name.text });
    this.take();
    const args: Node[] = [];
    this.nested(name, () => {
      if (this.is(')')) return;
      for (;;) {
        args.push(this.argument());
        if (args.length > limits.args)
          this.refuse(name, 'too-many-written', {
            function: name.text.toUpperCase(),
            details: { most: limits.args },
          });
        if (!this.is(',')) break;
        this.take();
      }
    });
    if (this.is(';')) this.refuse(this.next, 'semicolon', { function: name.text.toUpperCase() });
    if (!this.is(')')) throw this.unexpected(`"," or ")" of ${name.text.toUpperCase()}`);
    const to = this.take().to;
    const span = { from: name.from, to };
    return this.made(
      { type: 'call', name: name.text.toUpperCase(), nameSpan: spanOf(name), args, span },
      ...args,
    );
  }

  private argument(): Node {
    if (this.is(',') || this.is(')')) {
      const { from } = this.next;
      return { type: 'empty', span: { from, to: from } };
    }
    return this.expression(0);
  }

  /** `{1,2;3,4}`: `,` between columns, `;` between rows, constants only (OpenFormula 5.13). */
  private array(): Node {
    const open = this.take();
    const rows: Node[][] = [[]];
    let cells = 0;
    for (;;) {
      rows.at(-1)!.push(this.nested(open, () => this.constant()));
      if (++cells > limits.arrayCells)
        this.refuse(open, 'array-too-large', { details: { most: limits.arrayCells } });
      if (this.is(',')) this.take();
      else if (this.is(';')) {
        this.take();
        rows.push([]);
      } else break;
    }
    if (!this.is('}')) throw this.unexpected('",", ";" or "}"');
    const span = { from: open.from, to: this.take().to };
    if (rows.some((row) => row.length !== rows[0]!.length)) this.refuse(span, 'uneven-array');
    return this.made({ type: 'array', rows, span }, ...rows.flat());
  }

  private constant(): Node {
    const from = this.next;
    const node = this.expression(PERCENT);
    let inside = node;
    while (inside.type === 'unary' || inside.type === 'percent') inside = inside.operand;
    if (!['number', 'text', 'yes-no', 'error'].includes(inside.type)) this.refuse(from, 'array-constant');
    return node;
  }
}

const spanOf = ({ from, to }: Token): Span => ({ from, to });

/** The corners of a range, upper left first; each keeps the `$` of its own column and row. */
function inOrder(a: Address, b: Address): { from: Address; to: Address } {
  const [left, right] = a.column <= b.column ? [a, b] : [b, a];
  const [top, bottom] = a.row <= b.row ? [a, b] : [b, a];
  const corner = (c: Address, r: Address): Address => ({
    column: c.column,
    columnFixed: c.columnFixed,
    row: r.row,
    rowFixed: r.rowFixed,
  });
  return { from: corner(left, top), to: corner(right, bottom) };
}

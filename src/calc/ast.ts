/** The trees of formulas: as they were read, and bound to the columns of a book. */
import type { ErrorCode, Issue } from '../../functions/core/issue.ts';
import type { Span } from './api.ts';

export type BinaryOperator = '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '<=' | '>' | '>=';

/** A cell address as written. Column and row count from 0; a `$` fixes it. */
export interface Address {
  readonly column: number;
  readonly row: number;
  readonly columnFixed: boolean;
  readonly rowFixed: boolean;
}

interface Shared {
  readonly span: Span;
}

/** What both trees have: literals, operators and calls. `N` is the tree's own node type. */
export interface NumberNode extends Shared {
  readonly type: 'number';
  readonly value: number;
}
export interface TextNode extends Shared {
  readonly type: 'text';
  readonly value: string;
}
export interface YesNoNode extends Shared {
  readonly type: 'yes-no';
  readonly value: boolean;
}
/**
 * An error value written out, or what is left of a reference whose target was deleted (`lost`: its old name), or, in a
 * bound tree, what could not be looked up (`issue`: why).
 */
export interface ErrorNode extends Shared {
  readonly type: 'error';
  readonly code: ErrorCode;
  readonly lost?: string;
  readonly issue?: Issue;
}
/** An argument that is left out: `IF(a,,b)`. */
export interface EmptyNode extends Shared {
  readonly type: 'empty';
}
export interface ArrayNode<N> extends Shared {
  readonly type: 'array';
  readonly rows: readonly (readonly N[])[];
}
export interface UnaryNode<N> extends Shared {
  readonly type: 'unary';
  readonly operator: '+' | '-';
  readonly operand: N;
}
export interface PercentNode<N> extends Shared {
  readonly type: 'percent';
  readonly operand: N;
}
export interface BinaryNode<N> extends Shared {
  readonly type: 'binary';
  readonly operator: BinaryOperator;
  readonly left: N;
  readonly right: N;
}
/** `name` in capitals; `nameSpan` is where it stands. */
export interface CallNode<N> extends Shared {
  readonly type: 'call';
  readonly name: string;
  readonly nameSpan: Span;
  readonly args: readonly N[];
}

/** A formula as written: names are not looked up yet. */
export type Node =
  | NumberNode
  | TextNode
  | YesNoNode
  | ErrorNode
  | EmptyNode
  | ArrayNode<Node>
  | UnaryNode<Node>
  | PercentNode<Node>
  | BinaryNode<Node>
  | CallNode<Node>
  /** `femur`, `target_lean`, or a name that LET gave. */
  | (Shared & { readonly type: 'name'; readonly name: string })
  /** `roster.femur` */
  | (Shared & { readonly type: 'qualified'; readonly sheet: string; readonly name: string })
  /** `B7`, `sheet!B7` */
  | (Shared & { readonly type: 'cell'; readonly sheet?: string; readonly at: Address })
  /** `B7:C9`, `sheet!B7:C9` */
  | (Shared & {
      readonly type: 'cells';
      readonly sheet?: string;
      readonly from: Address;
      readonly to: Address;
    });

/**
 * A formula with its names looked up in the book: sheets and columns by id. Addresses of a column formula are as written
 * for row 1; without `$` their row moves along with the row, as a formula filled down does.
 */
export type Bound =
  | NumberNode
  | TextNode
  | YesNoNode
  | ErrorNode
  | EmptyNode
  | ArrayNode<Bound>
  | UnaryNode<Bound>
  | PercentNode<Bound>
  | BinaryNode<Bound>
  | CallNode<Bound>
  /** This row's value of a column of the formula's own sheet. */
  | (Shared & { readonly type: 'row-of'; readonly sheet: string; readonly column: string })
  /** A whole column. */
  | (Shared & { readonly type: 'column-of'; readonly sheet: string; readonly column: string })
  | (Shared & {
      readonly type: 'named';
      readonly name: string;
      readonly sheet: string;
      readonly column: string;
      readonly row: number;
    })
  /** A name that LET gave. */
  | (Shared & { readonly type: 'local'; readonly name: string })
  /** `row` is −1-free and counts from 0; `rowMoves` when it moves along with the row of a column formula. */
  | (Shared & {
      readonly type: 'cell-of';
      readonly sheet: string;
      readonly column: string;
      readonly row: number;
      readonly rowMoves: boolean;
    })
  /** Columns in sheet order, rows [from, to] both in. */
  | (Shared & {
      readonly type: 'cells-of';
      readonly sheet: string;
      readonly columns: readonly string[];
      readonly from: number;
      readonly to: number;
      readonly fromMoves: boolean;
      readonly toMoves: boolean;
    });

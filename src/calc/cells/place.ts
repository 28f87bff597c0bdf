import type { Kind, Value } from '../../../functions/core/value.ts';
import type { Source } from '../plan/api.ts';

/** What one cell holds at the moment. */
export interface Spot {
  readonly kind: Kind;
  readonly value: Value;
}

/** Where the formula that is being evaluated stands, and what it may read. Set before each evaluation. */
export interface Place {
  source: Source;
  row: number;
  /** Differs from one evaluation to the next. */
  evaluation: number;
  spot(sheet: string, column: string, row: number): Spot;
}

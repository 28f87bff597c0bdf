/** A file that is ready to be read as a table. */
import type { IntakeOptions } from '../api.ts';

export interface PrepareOptions {
  readonly name?: string;
  /** Which table of a workbook; the first that has rows when left out. */
  readonly table?: string;
  /** Bytes that may be unpacked from one workbook. */
  readonly largestUnpacked?: number;
}

/** A file as the intake reads it, and what to hand on with it. */
export interface Prepared {
  readonly bytes: Uint8Array;
  readonly options: Pick<IntakeOptions, 'choices' | 'hash' | 'size' | 'workbook'>;
}

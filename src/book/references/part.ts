import type { Book, Json, PartName } from '../model.ts';
import type { z } from '../zod.ts';

/**
 * What a part of a book points at goes through these, one after another; each answers what stands there after a change.
 * What is gone is answered with its old name, marked; ids of what belongs to a column answer undefined.
 */
export interface References {
  readonly book: Book;
  readonly columns: {
    /** Name of a column of a sheet, the sheet by id or name. */
    named(sheet: string | undefined, name: string): string;
    /** Id of a column of the sheet of that id; undefined when the column goes. */
    ofId(sheet: string, id: string): string | undefined;
    /** A list of what belongs to columns of the sheet of that id: an entry goes with its column, and is copied with it. */
    own<T extends { readonly column: string }>(
      sheet: string,
      list: readonly T[],
      inside?: (entry: T, formulas: References['formulas']) => T,
    ): T[];
    /** The same for what only looks at a column: it goes with the column, and is not copied with it. */
    about<T extends { readonly column: string }>(sheet: string, list: readonly T[]): T[];
  };
  readonly sheets: {
    /** Id of a sheet. */
    ofId(id: string): string;
    named(name: string): string;
    /** Id or name. */
    either(sheet: string): string;
  };
  /** Name of a named cell, where no column of that name is meant. */
  readonly names: (name: string) => string;
  /** A formula that is computed in the sheet of that id. */
  readonly formulas: (formula: string, home: string | undefined) => string;
}

/** One kind of record that a book keeps: its shape, and everything in it that points into the book. */
export interface BookPart<T = unknown> {
  /** What the user calls one, for undo. */
  readonly word: string;
  readonly part: PartName;
  /** The key of the one record of this kind; left out where any key holds one. */
  readonly key?: string;
  /** Records stand under the id of the sheet that they belong to: they go and are copied with it. */
  readonly bySheet?: boolean;
  readonly schema: z.ZodType<T>;
  /** The record after a change. A part that points at nothing says so with `pointsAtNothing`. */
  readonly references: (record: T, visit: References, key: string) => T | null;
}

export const pointsAtNothing = <T>(record: T): T => record;

/** A part of a book, with its type forgotten: its schema checks each record. */
export type AnyPart = BookPart<never>;

/** Defines a part of a book. */
export const definePart = <T>(part: BookPart<T>): BookPart<T> => part;

/** A record as it is stored: what is undefined is left out. */
export const asRecord = (record: object): Json => JSON.parse(JSON.stringify(record)) as Json;

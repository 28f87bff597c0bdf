/** Turns the JSON of one format into that of the next. */
export type Migration = (book: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** By the format they start from: `[1]` makes format 2 of format 1. Format 1 is the first, so there is none yet. */
export const migrations: ReadonlyMap<number, Migration> = new Map();

/** The format that this program writes and the newest that it reads. */
export const CURRENT_FORMAT = 1;

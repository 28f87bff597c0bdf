/** How well a value is known. Shown beside the value wherever the product explains itself. */
export type Status =
  | 'published'
  | 'secondary transcription'
  | 'common practice'
  | 'working assumption'
  | 'from memory'
  | 'definition';

/** Where a value or a rule comes from. */
export interface Source {
  readonly status: Status;
  /** Author, year, title or journal, page or table. For practice and assumptions: the reason in words. */
  readonly citation: string;
}

/** A number that cannot be written down without saying where it comes from. */
export interface Constant {
  readonly name: string;
  readonly value: number;
  /** Unit as printed, `''` for a plain number. */
  readonly unit: string;
  readonly source: Source;
}

/** Read in the publication itself. */
export const published = (citation: string): Source => ({ status: 'published', citation });
/** A published value read in a later work that repeats it. */
export const secondary = (citation: string): Source => ({ status: 'secondary transcription', citation });
/** A rule of the trade. */
export const practice = (reason: string): Source => ({
  status: 'common practice',
  citation: `${reason} (common practice, no published source)`,
});
/** This project's own choice, open to better evidence. */
export const assumption = (reason: string): Source => ({ status: 'working assumption', citation: reason });
/** Not verified against the publication. */
export const memory = (citation: string): Source => ({ status: 'from memory', citation });
/** True by definition or by derivation: geometry, statics, a standard. */
export const definition = (citation: string): Source => ({ status: 'definition', citation });

export const constant = (name: string, value: number, unit: string, source: Source): Constant => ({
  name,
  value,
  unit,
  source,
});

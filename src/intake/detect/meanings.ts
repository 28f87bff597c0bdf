import type { Column } from '../../book/model.ts';
import type { IntakeOptions, PlausibleColumn } from '../api.ts';
import { headingKey, synonymIndex, synonyms } from './synonyms.ts';

/** Finds what is known about a column, by its name, its label, or a word of the trade for them. */
export class Meanings<T> {
  private readonly lines = synonymIndex(synonyms);
  private readonly known = new Map<string, T>();

  constructor(entries: readonly (readonly [names: readonly string[], value: T])[]) {
    for (const [names, value] of entries)
      for (const name of names) {
        const key = headingKey(name);
        this.known.set(key, value);
        const line = this.lines.get(key);
        for (const other of line === undefined ? [] : synonyms[line]!)
          if (!this.known.has(other)) this.known.set(other, value);
      }
  }

  of(column: Pick<Column, 'name' | 'label'>): T | undefined {
    return this.known.get(headingKey(column.name)) ?? this.known.get(headingKey(column.label));
  }
}

/** Bounds of a column, if it is known what it measures. */
export function boundsFor({ plausibility }: IntakeOptions): (column: Column) => PlausibleColumn | null {
  const known = new Meanings((plausibility?.columns ?? []).map((p) => [p.names, p]));
  return (column) => {
    const found = known.of(column);
    return found && (found.dimension === undefined || found.dimension === column.dimension) ? found : null;
  };
}

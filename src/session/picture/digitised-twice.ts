/** What placing points again tells: the same picture or frame digitised in two rows or more gives the error of placing. */

import type { Sheet } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { ReadContext } from '../open-book.ts';

export interface DigitisedTwice {
  /** Pictures or frames that were digitised more than once. */
  readonly frames: number;
  /** Standard error of measurement of one digitising, deg; null where no frame has the angle twice. */
  readonly sem: Readonly<Record<'observed_lean' | 'shin' | 'depth', number | null>>;
}

/** Rows that are looked through. */
const MOST = 5000;

/**
 * The within-frame standard deviation √(Σ Σ(x − x̄)² / Σ(k − 1)) of lean, shin angle and depth, over frames with the same
 * fingerprint and time; for pairs that is √(Σd²/2n). Bland & Altman 1996, BMJ 313:744. Null where no frame comes twice.
 */
export function digitisedTwice({ calculation }: ReadContext, sheet: Sheet): DigitisedTwice | null {
  const hash = columnInRole(sheet, 'picture_sha256');
  if (!hash) return null;
  const time = columnInRole(sheet, 'frame_time');
  const frames = new Map<string, number[]>();
  for (let row = 0; row < Math.min(sheet.rows, MOST); row++) {
    const picture = calculation.value(sheet.id, hash.id, row);
    if (typeof picture !== 'string' || picture === '') continue;
    const at = time ? calculation.value(sheet.id, time.id, row) : null;
    const key = `${picture} ${typeof at === 'number' ? at : ''}`;
    frames.set(key, [...(frames.get(key) ?? []), row]);
  }
  const again = [...frames.values()].filter(({ length }) => length > 1);
  if (again.length === 0) return null;
  const semOf = (role: string): number | null => {
    const column = columnInRole(sheet, role);
    let [squares, free] = [0, 0];
    for (const rows of again) {
      const values = rows.flatMap((row) => {
        const value = column ? calculation.value(sheet.id, column.id, row) : null;
        return typeof value === 'number' ? [value] : [];
      });
      if (values.length < 2) continue;
      const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
      squares += values.reduce((sum, one) => sum + (one - mean) * (one - mean), 0);
      free += values.length - 1;
    }
    return free === 0 ? null : Math.sqrt(squares / free);
  };
  return {
    frames: again.length,
    sem: { observed_lean: semOf('observed_lean'), shin: semOf('shin'), depth: semOf('depth') },
  };
}

import { type DisplayUnit, unitFromWord } from '../../units/unit.ts';
import { LONGEST_VALUE } from '../words.ts';

/** A number with a unit behind it, as it stands in one cell. */
export interface UnitCell {
  /** '' when the cell is made of several pieces (5'10"). */
  readonly number: string;
  readonly word: string;
  readonly unit: DisplayUnit | null;
}

const PIECE = /^([+\-−]?[\d.,\u00a0\u2009\u202f']*\d[.,]?)\s*(%|[^\d\s.,;+-][^\d;]{0,14})$/u;
const FEET =
  /^(\d{1,2})\s*(?:'|′|’|ft|feet|foot)\.?\s*(\d{1,2}(?:[.,]\d+)?)?\s*(?:"|″|”|''|in|inch|inches)?\.?$/i;

/** Takes "44 cm", "72 %", "5'10"" apart; null when the text is nothing of the kind. */
export function readUnitCell(text: string): UnitCell | null {
  if (text.length > LONGEST_VALUE) return null;
  const feet = FEET.exec(text);
  if (feet) return { number: '', word: 'ft', unit: unitFromWord('ft') ?? null };
  const piece = PIECE.exec(text);
  if (piece) {
    const word = piece[2]!.trim();
    if (word === '%') return { number: piece[1]!, word, unit: null };
    const unit = unitFromWord(word);
    if (unit) return { number: piece[1]!, word: unit.unit, unit };
  }
  return null;
}

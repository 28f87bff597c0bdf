/** Reads durations as they are written in logs. */
import type { Clock } from '../api.ts';
import { LONGEST_VALUE } from '../words.ts';

const COLONS = /^(\d{1,4}):([0-5]?\d)(?::([0-5]?\d(?:[.,]\d+)?))?([.,]\d+)?$/;
const WORDS =
  /^(?:(\d+(?:[.,]\d+)?)\s*(?:h|hr|hrs|hour|hours|std)\.?)?\s*(?:(\d+(?:[.,]\d+)?)\s*(?:min|mins|minute|minutes|minuten|m|'|′)\.?)?\s*(?:(\d+(?:[.,]\d+)?)\s*(?:s|sec|secs|second|seconds|sek|"|″)\.?)?$/i;
const HOURS_AND_MINUTES = /^(\d{1,3})\s*h\s*([0-5]\d)$/i;

const plain = (text: string | undefined): number => (text ? Number(text.replace(',', '.')) : 0);

/** Minutes of a duration written with colons or words (1:23:45, 75 min, 1 h 15 min, 12'30"), or NaN. */
export function readDuration(text: string, clock: Clock): number {
  const t = text.trim();
  if (t.length > LONGEST_VALUE) return Number.NaN;
  let m = COLONS.exec(t);
  if (m) {
    if (m[3] !== undefined) return m[4] ? Number.NaN : Number(m[1]) * 60 + Number(m[2]) + plain(m[3]) / 60;
    if (m[4] !== undefined) return Number(m[1]) + (Number(m[2]) + plain(`0${m[4]}`)) / 60;
    return clock === 'h:mm' ? Number(m[1]) * 60 + Number(m[2]) : Number(m[1]) + Number(m[2]) / 60;
  }
  m = HOURS_AND_MINUTES.exec(t);
  if (m) return Number(m[1]) * 60 + Number(m[2]);
  m = WORDS.exec(t);
  if (m && (m[1] ?? m[2] ?? m[3]) !== undefined) return plain(m[1]) * 60 + plain(m[2]) + plain(m[3]) / 60;
  return Number.NaN;
}

export interface DurationUse {
  readonly form: 'three parts' | 'two parts' | 'words';
  /** Which clock two parts prove: more than 23 in front is minutes, decimals behind are seconds. */
  readonly proves: Clock | null;
}

/** How a text that could be a duration is written; null when it is none (plain numbers too). */
export function durationUse(text: string): DurationUse | null {
  const t = text.trim();
  if (t.length > LONGEST_VALUE) return null;
  const m = COLONS.exec(t);
  if (m) {
    if (m[3] !== undefined) return m[4] ? null : { form: 'three parts', proves: 'h:mm' };
    return { form: 'two parts', proves: m[4] !== undefined || Number(m[1]) > 23 ? 'm:ss' : null };
  }
  return /\d/.test(t) && !Number.isNaN(readDuration(t, 'h:mm')) ? { form: 'words', proves: null } : null;
}

/** Reads and writes units per day and per week. */
import type { Per } from './dimension.ts';

const RATE = /^(.*?)\s*(?:\bper\b|\/|\ba\b)\s*(days?|d|weeks?|wks?|w)\.?\s*$/iu;

/** Takes the time off a written rate: `0.5 kg per week` is `0.5 kg`, per week. */
export function splitRate(text: string): { readonly text: string; readonly per?: Per } {
  const found = RATE.exec(text);
  if (!found) return { text };
  return { text: found[1]!, per: found[2]!.toLowerCase().startsWith('d') ? 'day' : 'week' };
}

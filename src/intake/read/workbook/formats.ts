import { isoFromSerial } from '../../../units/date.ts';

/** What a number of a spreadsheet stands for, by its format. */
export type NumberUse = 'number' | 'date' | 'time' | 'percent';

/** The formats that every spreadsheet knows by number (ECMA-376 part 1, 18.8.30): those of dates, times and per cent. */
const builtIn: Readonly<Record<number, NumberUse>> = {
  9: 'percent',
  10: 'percent',
  14: 'date',
  15: 'date',
  16: 'date',
  17: 'date',
  18: 'time',
  19: 'time',
  20: 'time',
  21: 'time',
  22: 'date',
  27: 'date',
  30: 'date',
  36: 'date',
  45: 'time',
  46: 'time',
  47: 'time',
  50: 'date',
  57: 'date',
};

/** What a format's code makes of a number; without texts in quotes, colours and conditions. */
export function useOfCode(code: string): NumberUse {
  const bare = code
    .split(';')[0]!
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '');
  if (/[yd]/i.test(bare) || /m{3,}/i.test(bare)) return 'date';
  if (/[hs]/i.test(bare)) return 'time';
  return bare.includes('%') ? 'percent' : 'number';
}

export const useOfFormat = (id: number, codes: ReadonlyMap<number, string>): NumberUse => {
  const code = codes.get(id);
  return code === undefined ? (builtIn[id] ?? 'number') : useOfCode(code);
};

/** A number of a spreadsheet as the text that the intake reads. `first1904`: the file counts days from 1904. */
export function textOfNumber(value: number, use: NumberUse, first1904: boolean): string {
  if (use === 'percent') return `${Number((value * 100).toPrecision(15))}%`;
  if (use === 'time' && value >= 0) return timeText(value);
  if (use === 'date') {
    // Day 60 is the 29th of February 1900, which never was: days before it are one off (ECMA-376 part 1, 18.17.4.1).
    const serial = first1904 ? value + 1462 : value < 60 ? value + 1 : value;
    return isoFromSerial(serial) ?? String(value);
  }
  return String(value);
}

/** Part of a day as h:mm:ss. */
function timeText(days: number): string {
  const seconds = Math.round(days * 86_400);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

import type { Dimension } from './dimension.ts';
import type { Locale } from './locale.ts';
import { type NumberStyle, readNumber, writeNumber } from './number.ts';
import { type DisplayUnit, fromBase, toBase, unitFromWord } from './unit.ts';

/** A number read in base units, or why it was not, one sentence. */
export type Reading = { readonly value: number } | { readonly reason: string };

const ARTICLE: Readonly<Record<Dimension, string>> = {
  length: 'a length',
  mass: 'a mass',
  angle: 'an angle',
  force: 'a force',
  moment: 'a moment',
  velocity: 'a velocity',
  duration: 'a duration',
};

/** What a unit may be followed by without its own unit, as in `5 ft 11` and `11 st 4`. */
const SMALLER: Readonly<Record<string, string>> = {
  ft: 'in',
  st: 'lb',
  h: 'min',
  min: 's',
  m: 'cm',
  kg: 'g',
};
const PIECE =
  /^\s*([+\-−–]?[\d.,\u00a0\u2009\u202f ]*\d[.,]?(?:e[+-]?\d+)?)\s*([^\d\s.,+\-−–][^\d]*?|)(?=[\s,]*\d|\s*$)/iu;
/** `16 1/2`, as on a tape in inches. */
const FRACTION = /(\d+)\s+(1?\d)\/(2|4|8|16|32)(?!\d)/g;
const CLOCK = /^\s*(\d+):([0-5]\d)(?::([0-5]\d(?:[.,]\d+)?))?\s*$/;

/**
 * Reads a number as typed into a column: with the locale's decimal mark, and with a unit typed along (`17 in`,
 * `5 ft 11`, `5'11"`, `225 lb`, `1:15:00`), which wins over the column's display unit. The value comes in base units.
 */
export function readQuantity(text: string, unit: DisplayUnit | undefined, locale: Locale): Reading {
  const plain = readNumber(text, locale);
  if (plain !== undefined) return { value: toBase(plain, unit) };
  if (!unit) return readPlain(text, locale);
  if (unit.dimension === 'duration') {
    const clock = readClock(text, unit);
    if (clock !== undefined) return { value: clock };
  }
  return readPieces(text, unit, locale);
}

function readPlain(text: string, locale: Locale): Reading {
  const percent = /^(.*\d)\s*%$/.exec(text.trim());
  const value = percent ? readNumber(percent[1]!, locale) : undefined;
  return value === undefined
    ? { reason: `"${brief(text)}" is not a number.` }
    : { value: Number(`${value}e-2`) };
}

/** `1:15:00` and `75:30`: hours, minutes, seconds, or minutes, seconds; `1:15` in a column of hours: hours, minutes. */
function readClock(text: string, unit: DisplayUnit): number | undefined {
  const found = CLOCK.exec(text);
  if (!found) return undefined;
  const [a, b, c] = [Number(found[1]), Number(found[2]), found[3]];
  if (c !== undefined) return a * 60 + b + Number(c.replace(',', '.')) / 60;
  return unit.unit === 'h' ? a * 60 + b : a + b / 60;
}

function readPieces(text: string, unit: DisplayUnit, locale: Locale): Reading {
  let rest = text
    .trim()
    .replace(FRACTION, (_, whole: string, up: string, down: string) =>
      String(Number(whole) + Number(up) / Number(down)).replace('.', locale.decimal),
    );
  if (rest === '') return { reason: 'Nothing was typed.' };
  const pieces: { number: number; unit: DisplayUnit }[] = [];
  let sign = 1;
  let before: DisplayUnit | undefined;
  for (let n = 0; rest !== ''; n++) {
    const found = PIECE.exec(rest);
    const number = found ? readNumber(found[1]!, locale) : undefined;
    if (!found || number === undefined || n > 3) return { reason: `"${brief(text)}" is not a number.` };
    const word = found[2]!;
    const smaller = before ? SMALLER[before.unit] : undefined;
    const own =
      word === '' ? (smaller ? unitFromWord(smaller) : n === 0 ? unit : undefined) : unitFromWord(word);
    if (!own) return { reason: noUnit(text, word, unit) };
    if (own.dimension !== unit.dimension)
      return {
        reason: `"${brief(text)}" is ${ARTICLE[own.dimension]}; this column holds ${ARTICLE[unit.dimension]}, in ${unit.unit}.`,
      };
    if (n > 0 && (number < 0 || !before || own.per / own.of >= before.per / before.of))
      return { reason: `"${brief(text)}" is not a number.` };
    if (n === 0 && (number < 0 || /^[-−–]/.test(found[1]!.trim()))) sign = -1;
    pieces.push({ number: Math.abs(number), unit: own });
    before = own;
    rest = rest.slice(found[0].length).replace(/^\s*,?\s*/, '');
  }
  return { value: sign * sum(pieces) + 0 };
}

/** The pieces together in base units; units of one system are added before the one division, so 5 ft 11 is 71 in exactly. */
function sum(pieces: readonly { readonly number: number; readonly unit: DisplayUnit }[]): number {
  const of = pieces[0]!.unit.of;
  if (pieces.every((p) => p.unit.of === of))
    return pieces.reduce((all, p) => all + p.number * p.unit.per, 0) / of;
  return pieces.reduce((all, p) => all + toBase(p.number, p.unit), 0);
}

const noUnit = (text: string, word: string, unit: DisplayUnit): string =>
  word === ''
    ? `"${brief(text)}" is not a number.`
    : `"${brief(word)}" in "${brief(text)}" is not a unit of ${ARTICLE[unit.dimension].replace(/^an? /, '')} that is known here.`;

const brief = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

/** A stored number as shown in a column. */
export const writeQuantity = (
  value: number,
  unit: DisplayUnit | undefined,
  style: NumberStyle,
  locale: Pick<Locale, 'decimal'>,
): string => writeNumber(fromBase(value, unit), style, locale);

/**
 * A stored number as an editor starts with it: the shortest text in the display unit that reads back as exactly this
 * number, or as close as 17 figures come.
 */
export function editText(
  value: number,
  unit: DisplayUnit | undefined,
  locale: Pick<Locale, 'decimal'>,
): string {
  const shown = fromBase(value, unit);
  // A number that was typed with up to 15 figures is exactly what 15 figures give; longer ones need up to 17.
  let text = String(shown);
  if (unit && unit.per !== unit.of)
    for (const figures of [15, 16]) {
      const shorter = Number(shown.toPrecision(figures));
      if (toBase(shorter, unit) !== value) continue;
      text = String(shorter);
      break;
    }
  return locale.decimal === ',' ? text.replace('.', ',') : text;
}

/** Reads numbers with the marks of any locale. */
import type { DecimalMark, ThousandsMark } from '../api.ts';
import { LONGEST_VALUE } from '../words.ts';

export interface NumberStyle {
  readonly decimal: DecimalMark;
  readonly thousands: ThousandsMark;
}

/** Powers of ten that a double holds exactly; mantissa ÷ power is then the nearest double (Clinger 1990). */
const POWERS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const EXACT_DIGITS = 15;

/**
 * The number that a text is in this style, or NaN. Blanks around it, a sign (also the true minus) and an exponent are
 * allowed; anything else, a unit too, is no number.
 */
export function readNumber(text: string, style: NumberStyle): number {
  const decimal = style.decimal === '.' ? 46 : 44;
  const n = text.length;
  let i = 0;
  let negative = false;
  const first = text.charCodeAt(0);
  if (first === 45 || first === 43) {
    negative = first === 45;
    i = 1;
  }
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; i < n; i++) {
    const c = text.charCodeAt(i);
    if (c >= 48 && c <= 57) {
      mantissa = mantissa * 10 + (c - 48);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (c === decimal && decimals < 0) decimals = 0;
    else return readSlowly(text, style);
  }
  if (digits === 0) return Number.NaN;
  if (digits > EXACT_DIGITS) return readSlowly(text, style);
  const value = decimals > 0 ? mantissa / POWERS[decimals]! : mantissa;
  return negative ? -value : value;
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
/** Spaces that stand between groups of digits: also the no-break and thin ones. */
const SPACES = /[\s\u00a0\u2007\u2009\u202f]/g;
const groups: Readonly<Record<string, RegExp>> = {
  ',': /^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/,
  '.': /^[+-]?\d{1,3}(\.\d{3})+(,\d*)?$/,
  "'": /^[+-]?\d{1,3}(['’]\d{3})+([.,]\d*)?$/,
  ' ': /^[+-]?\d{1,3}([\s\u00a0\u2007\u2009\u202f]\d{3})+([.,]\d*)?$/,
};

function readSlowly(text: string, { decimal, thousands }: NumberStyle): number {
  if (text.length > 2 * LONGEST_VALUE) return Number.NaN;
  let t = text.trim().replace(/^[−–]/, '-');
  if (thousands !== '' && groups[thousands]!.test(t))
    t = t.replace(
      thousands === ' ' ? SPACES : thousands === "'" ? /['’]/g : thousands === ',' ? /,/g : /\./g,
      '',
    );
  if (decimal === ',') t = t.includes('.') ? 'no' : t.replace(',', '.');
  const value = PLAIN.test(t) ? Number(t) : Number.NaN;
  return Number.isFinite(value) ? value : Number.NaN;
}

/** How a text that could be a number uses its marks; the evidence for a column's style. */
export type MarkUse =
  | 'plain'
  | 'point'
  | 'comma'
  /** One group of three after a mark: 1.234 or 1,234. */
  | 'point-or-thousands'
  | 'comma-or-thousands'
  | 'comma-thousands'
  | 'point-thousands'
  | 'space-thousands'
  | 'space-thousands-comma'
  | 'quote-thousands'
  | 'none';

const uses: readonly (readonly [MarkUse, RegExp])[] = [
  ['plain', /^[+-]?\d+(e[+-]?\d{1,3})?$/i],
  ['point-or-thousands', /^[+-]?[1-9]\d{0,2}\.\d{3}$/],
  ['comma-or-thousands', /^[+-]?[1-9]\d{0,2},\d{3}$/],
  ['point', /^[+-]?(\d+\.\d*|\.\d+)(e[+-]?\d{1,3})?$/i],
  ['comma', /^[+-]?(\d+,\d*|,\d+)(e[+-]?\d{1,3})?$/i],
  ['comma-thousands', /^[+-]?\d{1,3}(,\d{3})+\.\d+$|^[+-]?\d{1,3}(,\d{3}){2,}$/],
  ['point-thousands', /^[+-]?\d{1,3}(\.\d{3})+,\d+$|^[+-]?\d{1,3}(\.\d{3}){2,}$/],
  ['space-thousands-comma', /^[+-]?\d{1,3}([\s\u00a0\u2007\u2009\u202f]\d{3})+,\d+$/],
  ['space-thousands', /^[+-]?\d{1,3}([\s\u00a0\u2007\u2009\u202f]\d{3})+(\.\d+)?$/],
  ['quote-thousands', /^[+-]?\d{1,3}(['’]\d{3})+([.,]\d+)?$/],
];

export function markUse(text: string): MarkUse {
  if (text.length > LONGEST_VALUE) return 'none';
  const t = text.replace(/^[−–]/, '-');
  for (const [use, pattern] of uses) if (pattern.test(t)) return use;
  return 'none';
}

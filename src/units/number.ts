import type { Locale } from './locale.ts';

/** Signs that stand between groups of three figures; the one that is the decimal mark is not among them. */
const SPACES = '\\u0020\\u00a0\\u2009\\u202f';
const POINT = groupsWith(',', '\\.');
const COMMA = groupsWith('\\.', ',');
const PLAIN_POINT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const PLAIN_COMMA = /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d+)?$/i;

function groupsWith(mark: string, decimal: string): RegExp {
  return new RegExp(
    `^[+-]?[1-9]\\d{0,2}(?:(?:${mark}\\d{3})+|(?:[${SPACES}]\\d{3})+|(?:’\\d{3})+)(?:${decimal}\\d*)?$`,
  );
}

/**
 * The number that a text stands for: sign, figures, decimal mark, groups of three, exponent, or undefined. Where the
 * mark is not the locale's but can mean nothing else ("1,5" with a decimal point) it is read as the decimal mark.
 */
export function readNumber(text: string, locale: Pick<Locale, 'decimal'>): number | undefined {
  const trimmed = text.trim().replace(/^[−–]/, '-');
  const first = trimmed.charCodeAt(0);
  // Most texts that are no numbers end here: a number begins with a figure, a sign or a decimal mark.
  if (!((first >= 48 && first <= 57) || first === 43 || first === 45 || first === 46 || first === 44))
    return undefined;
  const [plain, other, groups] =
    locale.decimal === '.' ? [PLAIN_POINT, PLAIN_COMMA, POINT] : [PLAIN_COMMA, PLAIN_POINT, COMMA];
  if (plain.test(trimmed)) return finite(trimmed.replace(',', '.'));
  if (groups.test(trimmed)) {
    const bare = trimmed.replace(new RegExp(`[${SPACES}’${locale.decimal === '.' ? ',' : '.'}]`, 'g'), '');
    return finite(bare.replace(',', '.'));
  }
  return other.test(trimmed) ? finite(trimmed.replace(',', '.')) : undefined;
}

function finite(text: string): number | undefined {
  const number = Number(text);
  return Number.isFinite(number) ? number + 0 : undefined;
}

/** How a number is written. */
export interface NumberStyle {
  /** Figures after the decimal mark; undefined: as many as it has, up to 10 significant. */
  readonly digits?: number;
  readonly percent?: boolean;
}

/** A number for people: rounded half away from zero, never "-0", always as many decimals as asked, so columns line up. */
export function writeNumber(value: number, style: NumberStyle, locale: Pick<Locale, 'decimal'>): string {
  const shown = style.percent ? shifted(value, 2) : value;
  const text = style.digits === undefined ? shortest(shown) : fixed(shown, style.digits);
  return (locale.decimal === ',' ? text.replace('.', ',') : text) + (style.percent ? ' %' : '');
}

const shortest = (value: number): string => String(Number(value.toPrecision(10)));

/** Moves the decimal mark without a binary rounding: 1.005 by 2 is 100.5. */
function shifted(value: number, by: number): number {
  const [mantissa, exponent = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent) + by}`);
}

function fixed(value: number, digits: number): string {
  if (Math.abs(value) >= 1e15) return shortest(value);
  const whole = Math.sign(value) * Math.round(Math.abs(shifted(value, digits)));
  return shifted(whole + 0, -digits).toFixed(digits);
}

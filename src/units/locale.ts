/** How people write numbers and dates. Only reading and showing hang on it; files always have a point and ISO dates. */
export interface Locale {
  readonly decimal: '.' | ',';
  /** Order in dates written with figures alone. A year of four figures in front is always year, month, day. */
  readonly dateOrder: 'ymd' | 'dmy' | 'mdy';
}

export const plainLocale: Locale = { decimal: '.', dateOrder: 'ymd' };

/** The locale of a language tag ("de-CH"), as the platform's own formats show it. */
export function localeFor(tag: string): Locale {
  try {
    const decimal = new Intl.NumberFormat(tag).formatToParts(1.5).find((p) => p.type === 'decimal')?.value;
    const order = new Intl.DateTimeFormat(tag, { year: 'numeric', month: '2-digit', day: '2-digit' })
      .formatToParts(new Date(Date.UTC(2024, 0, 2)))
      .filter((p) => p.type === 'year' || p.type === 'month' || p.type === 'day')
      .map((p) => p.type[0])
      .join('');
    return {
      decimal: decimal === ',' ? ',' : '.',
      dateOrder: order === 'dmy' || order === 'mdy' ? order : 'ymd',
    };
  } catch {
    return plainLocale;
  }
}

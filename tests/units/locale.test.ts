import { expect, test } from 'vitest';
import { localeFor } from '../../src/units/locale.ts';
import { readYesNo, writeYesNo } from '../../src/units/yes-no.ts';

// Unicode CLDR: decimal marks and orders of numeric dates of these locales.
test.each([
  ['en-US', { decimal: '.', dateOrder: 'mdy' }],
  ['en-GB', { decimal: '.', dateOrder: 'dmy' }],
  ['de-DE', { decimal: ',', dateOrder: 'dmy' }],
  ['fr-FR', { decimal: ',', dateOrder: 'dmy' }],
  ['sv-SE', { decimal: ',', dateOrder: 'ymd' }],
  ['ja-JP', { decimal: '.', dateOrder: 'ymd' }],
  ['no such language', { decimal: '.', dateOrder: 'ymd' }],
] as const)('localeFor("%s") is %j', (tag, locale) => {
  expect(localeFor(tag)).toEqual(locale);
});

test('yes and no are read in any case and written in words', () => {
  for (const word of ['yes', 'Y', ' TRUE ', '1', 'x']) expect(readYesNo(word)).toBe(true);
  for (const word of ['no', 'N', 'false', '0']) expect(readYesNo(word)).toBe(false);
  for (const word of ['', 'maybe', '2', 'ja']) expect(readYesNo(word)).toBeUndefined();
  expect([writeYesNo(true), writeYesNo(false)]).toEqual(['yes', 'no']);
});

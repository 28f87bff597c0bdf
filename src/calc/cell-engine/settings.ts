import type { ConfigParams } from 'hyperformula';

/** Longest column of a sheet. */
const MAX_ROWS = 1_048_576;

/**
 * How the cell engine reads and compares values, for free cells and column plans alike: plain doubles without rounding,
 * ISO dates only, no currency, wildcards in criteria and searches, text compared in any case but with its accents.
 */
export const cellEngineSettings: Partial<ConfigParams> = {
  licenseKey: 'gpl-v3',
  smartRounding: false,
  useArrayArithmetic: true,
  caseSensitive: false,
  accentSensitive: true,
  localeLang: 'en',
  useWildcards: true,
  useRegularExpressions: false,
  matchWholeCell: true,
  currencySymbol: [],
  dateFormats: ['YYYY-MM-DD'],
  nullDate: { year: 1899, month: 12, day: 30 },
  leapYear1900: false,
  evaluateNullToZero: false,
  maxRows: MAX_ROWS,
  undoLimit: 0,
};
